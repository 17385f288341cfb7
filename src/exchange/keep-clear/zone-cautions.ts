/** What a speaker in a keep-clear zone has to be told, on the page and in every file. */

/** Beside one zone: what it says, and what it cannot say. */
export const zoneCaution = ({ given }: { given: boolean }): string =>
  given
    ? 'The speaker reaches into a zone you marked.'
    : 'The speaker reaches into the place usual for it in a body of this style. Whether this ' +
      'car has it just there, or somewhere else as well, cannot be told from here: the maker’s ' +
      'documents and the car itself decide.';

/** Beside a list of zones. */
export const ZONES_CAUTION =
  'as far as a body style tells. The maker’s documents and the car itself decide.';

/** Where a speaker reaches into no zone: that no zone is known is not that there is none. */
export const NO_ZONE_KNOWN = 'none known; the maker’s documents and the car itself decide';
