import type { Language } from './catalogue';
import { cautions } from './de/cautions';
import { customer } from './de/customer';
import { room } from './de/room';
import { things } from './de/things';

export const de: Language = {
  name: 'Deutsch',
  locale: 'de-DE',
  words: { ...room, ...things, ...cautions, ...customer },
};
