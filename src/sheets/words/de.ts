import type { Language } from './catalogue';
import { book } from './de/book';
import { cautions } from './de/cautions';
import { customer } from './de/customer';
import { dimensions } from './de/dimensions';
import { markOut } from './de/mark-out';
import { ring } from './de/ring';
import { room } from './de/room';
import { strip } from './de/strip';
import { things } from './de/things';
import { tune } from './de/tune';

export const de: Language = {
  name: 'Deutsch',
  locale: 'de-DE',
  words: {
    ...room,
    ...things,
    ...cautions,
    ...dimensions,
    ...customer,
    ...book,
    ...markOut,
    ...ring,
    ...strip,
    ...tune,
  },
};
