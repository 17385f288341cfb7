/** What a ring is turned and sawn by, as rows of a table. */
import { type RingForm, type RingInput, screwDepths } from '../../geometry';
import type { WordKey } from '../words/catalogue';
import type { PrintedWords } from '../words/use-words';

export interface RingRow {
  id: string;
  name: string;
  value: string;
  /** The value is a sentence, and takes the whole row. */
  isWords?: boolean;
}

/** A usual board, mm. Common practice, no source. */
const BOARD = 18;

const lengths =
  ({ n }: PrintedWords) =>
  (mm: number) =>
    n.length(mm, n.unit === 'mm' ? 1 : 3);

/**
 * Outside to inside, front to back.
 * @param behind of the speaker's body behind its panel, mm; 0: no hole is cut for it
 */
export function ringRows(
  words: PrintedWords,
  input: RingInput,
  form: RingForm,
  behind: number,
): RingRow[] {
  const { t, n } = words;
  const { outer, bore, rimRadius, seat, screws } = input;
  const { sections, thickSide, wedgeDeg, volume } = form;
  const mm = lengths(words);
  const wedge = thickSide !== null;
  const row = (key: WordKey, value: string): RingRow => ({ id: key, name: t(key), value });
  const only = (there: boolean, ...rows: RingRow[]) => (there ? rows : []);
  const depths = screwDepths(input, form);
  return [
    row('ring.outer', mm(outer)),
    row('ring.bore', mm(bore)),
    ...(seat.kind === 'sunk'
      ? [row('ring.recess', t('ring.recess-value', { mm: mm(seat.recess), depth: mm(seat.depth) }))]
      : []),
    row('ring.rim', rimRadius > 0 ? mm(rimRadius) : t('ring.rim-sharp')),
    ...only(!wedge, row('ring.thickness', mm(sections.middle))),
    ...only(
      wedge,
      row('ring.thin-outer', mm(sections.thinOuter)),
      row('ring.thin-bore', mm(sections.thinBore)),
      row('ring.middle', mm(sections.middle)),
      row('ring.thick-bore', mm(sections.thickBore)),
      row('ring.thick-outer', mm(sections.thickOuter)),
      row('ring.wedge', n.angle(wedgeDeg, 1)),
    ),
    row('ring.back', wedge ? sections.backOuter.map(mm).join(' × ') : mm(outer)),
    ...(behind > 0
      ? [row('ring.hole', wedge ? sections.backBore.map(mm).join(' × ') : mm(bore))]
      : [{ ...row('ring.hole', t('ring.hole-none')), isWords: true }]),
    ...only(
      wedge,
      row(behind > 0 ? 'ring.hole-middle' : 'ring.back-middle', mm(sections.boreShift)),
    ),
    ...(screws
      ? [row('ring.screws', t('ring.screws-value', { count: screws.count, mm: mm(screws.circle) }))]
      : []),
    ...(depths
      ? [
          row(
            'ring.under',
            mm(depths.least) === mm(depths.most)
              ? mm(depths.least)
              : t('ring.range', { least: mm(depths.least), most: mm(depths.most) }),
          ),
        ]
      : []),
    row('ring.material', `${n.number(volume / 1000)}\u00a0cm³`),
  ];
}

/** How it is made of boards. */
export function boardSentence(words: PrintedWords, input: RingInput, form: RingForm): string {
  const { t, n } = words;
  const { thinOuter, thickOuter } = form.sections;
  const mm = lengths(words);
  return t('ring.boards', {
    count: Math.ceil(thickOuter / BOARD - 1e-6),
    board: n.length(BOARD),
    outer: mm(input.outer),
    wedge: form.thickSide ? 'yes' : 'no',
    deg: n.angle(form.wedgeDeg, 1),
    thin: mm(thinOuter),
    thick: mm(thickOuter),
  });
}
