import {
  hourOf,
  MOST_WEDGE_DEG,
  panelFrame,
  type RingForm,
  type RingInput,
  type RingPlace,
  screwDepths,
} from '../../../geometry';
import { formatLength, formatNumber, type LengthUnit } from '../../../plan/units';

/** A usual board, mm. Common practice, no source. */
const BOARD = 18;

const length = (mm: number, unit: LengthUnit): string =>
  formatLength(mm, unit, unit === 'mm' ? 1 : 3);

/** "Too steep": a wedge over the limit, and what is done instead; `null` within it. */
export function steepWords({ overLimit, wedgeDeg }: RingForm): string | null {
  return overLimit
    ? `A wedge of ${formatNumber(wedgeDeg, 0)}° is over the limit of ${MOST_WEDGE_DEG}°: such a ring is ` +
        'a tower. Aim nearer to the panel’s normal, take another spot, or build a pod.'
    : null;
}

/** Where the thick side goes, on a clock face laid on the panel; `null` for a ring without a wedge. */
export function thickWords({ thickSide }: RingForm, { normal }: RingPlace): string | null {
  if (!thickSide) return null;
  const frame = panelFrame(normal);
  const twelve = frame.upIs === 'up' ? 'up' : `to the ${frame.upIs}`;
  return `Its thick side goes to ${hourOf(frame, thickSide)} o’clock as seen from the cabin, 12 being ${twelve}.`;
}

/** A flange that reaches beyond the flat it lies on; `null` where it does not. */
export function flangeWords(
  { outer, rimRadius, seat }: RingInput,
  flange: number,
  unit: LengthUnit,
): string | null {
  if (seat.kind === 'sunk') return null;
  const over = (flange - (outer - 2 * rimRadius)) / 2;
  return over > 0.05
    ? `The flange reaches ${length(over, unit)} beyond the flat of the ring’s front all round: ` +
        `make it ${length(flange + 2 * rimRadius, unit)} outside or more.`
    : null;
}

export interface Measure {
  name: string;
  value: string;
}

/**
 * What it is turned and sawn by, outside to inside.
 * @param behind of the speaker's body behind its panel, mm; 0: no hole is cut for it
 */
export function ringMeasures(
  input: RingInput,
  form: RingForm,
  unit: LengthUnit,
  behind: number,
): Measure[] {
  const { outer, bore, rimRadius, seat, screws } = input;
  const { sections, wedgeDeg } = form;
  const mm = (value: number) => length(value, unit);
  const wedge = form.thickSide !== null;
  const rows: (Measure | null)[] = [
    { name: 'Outside diameter', value: mm(outer) },
    { name: 'Bore', value: mm(bore) },
    seat.kind === 'sunk'
      ? { name: 'Recess for the flange', value: `${mm(seat.recess)}, ${mm(seat.depth)} deep` }
      : null,
    { name: 'Rim radius', value: rimRadius > 0 ? mm(rimRadius) : 'sharp' },
    wedge
      ? { name: 'Outer edge, thin side', value: mm(sections.thinOuter) }
      : { name: 'Thickness', value: mm(sections.middle) },
    wedge ? { name: 'Outer edge, thick side', value: mm(sections.thickOuter) } : null,
    wedge ? { name: 'At the bore, thin side', value: mm(sections.thinBore) } : null,
    wedge ? { name: 'At the bore, thick side', value: mm(sections.thickBore) } : null,
    wedge ? { name: 'In the middle', value: mm(sections.middle) } : null,
    wedge ? { name: 'Saw cut of the back', value: `${formatNumber(wedgeDeg, 1)}°` } : null,
    {
      name: 'Its back on the panel',
      value: wedge ? sections.backOuter.map(mm).join(' × ') : mm(outer),
    },
    {
      name: 'Hole in the panel',
      value:
        behind <= 0
          ? 'None: the body stands wholly before the panel. Only wires and fixings go through.'
          : wedge
            ? sections.backBore.map(mm).join(' × ')
            : mm(bore),
    },
    wedge
      ? {
          name: behind > 0 ? 'Middle of that hole' : 'Middle of its back',
          value: `${mm(sections.boreShift)} off the spot, to the thick side`,
        }
      : null,
    screws ? { name: 'Screws', value: `${screws.count} on ${mm(screws.circle)}` } : null,
    screwRow(input, form, unit),
  ];
  return rows.filter((row) => row !== null);
}

function screwRow(input: RingInput, form: RingForm, unit: LengthUnit): Measure | null {
  const depths = screwDepths(input, form);
  if (!depths) return null;
  const [least, most] = [length(depths.least, unit), length(depths.most, unit)];
  return { name: 'Ring under the screws', value: least === most ? least : `${least} to ${most}` };
}

/** How it is made of boards. */
export function boardWords(form: RingForm, input: RingInput, unit: LengthUnit): string {
  const { thickOuter, thinOuter } = form.sections;
  const boards = Math.ceil(thickOuter / BOARD - 1e-6);
  const blank =
    boards > 1
      ? `Glue ${boards} boards of ${formatLength(BOARD, unit)} to a blank`
      : `Take one board of ${formatLength(BOARD, unit)}`;
  const saw = form.thickSide
    ? `then saw its back at ${formatNumber(form.wedgeDeg, 1)}° so that ${length(thinOuter, unit)} are left on ` +
      `one side and ${length(thickOuter, unit)} on the other`
    : `then take its back off to ${length(thickOuter, unit)}`;
  return (
    `${blank}, turn it to ${length(input.outer, unit)} and bore it square to its face; ${saw}. ` +
    'The saw’s own width is not in these numbers.'
  );
}
