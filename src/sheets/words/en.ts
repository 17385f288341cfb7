import { book } from './en/book';
import { cautions } from './en/cautions';
import { customer } from './en/customer';
import { dimensions } from './en/dimensions';
import { markOut } from './en/mark-out';
import { ring } from './en/ring';
import { room } from './en/room';
import { strip } from './en/strip';
import { things } from './en/things';
import { tune } from './en/tune';

/** English: its keys are the catalogue's keys. */
export const en = {
  name: 'English',
  locale: 'en-GB',
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
