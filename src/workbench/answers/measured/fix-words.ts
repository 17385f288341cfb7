import type { FixAnswer, PositionFix, ReferencePoint, Vec3 } from '../../../geometry';
import { distance, sub } from '../../../geometry';
import { formatLength, type LengthUnit } from '../../../plan/units';
import { list } from './measured-words';

interface FixWording {
  unit: LengthUnit;
  /** "left tweeter", "head of the front left seat". */
  name: string;
  /** Of a reading by its id: "tape to the left sill top, front end". */
  reading: (id: string) => string;
}

/** "8 mm rearward, 5 mm to the left": what is less than half a mm is left out. */
export function awayWords(from: Vec3, to: Vec3, unit: LengthUnit): string {
  const [x, y, z] = sub(to, from);
  const parts = [
    { by: x, words: ['rearward', 'forward'] },
    { by: y, words: ['to the right', 'to the left'] },
    { by: z, words: ['up', 'down'] },
  ].filter(({ by }) => Math.abs(by) >= 0.5);
  return list(
    parts.map(({ by, words }) => `${formatLength(Math.abs(by), unit)} ${words[by > 0 ? 0 : 1]}`),
  );
}

/** Where it is, and how sure that is. */
export function placeWords(fix: PositionFix, near: Vec3, count: number, w: FixWording): string {
  const used = count - fix.blunders.length;
  const off = distance(fix.position, near);
  const sure = `With 95 in 100 it lies within ${formatLength(fix.within95, w.unit, w.unit === 'mm' ? 1 : 2)} of the place found.`;
  const away = awayWords(near, fix.position, w.unit);
  const where =
    off <= fix.within95 || away === ''
      ? `the ${w.name} stands where the plan has it, as far as they can tell (${formatLength(off, w.unit)} off)`
      : `the ${w.name} stands ${formatLength(off, w.unit)} from where the plan has it: ${away}`;
  return `By ${used} readings ${where}. ${sure}`;
}

/** Blunders, contradictions and mirror images, each in a sentence. */
export function doubtWords(fix: PositionFix, next: readonly ReferencePoint[], w: FixWording) {
  const [best] = next;
  const blunders = fix.blunders.map(
    ({ id, off }) =>
      `The ${w.reading(id)} is ${formatLength(Math.abs(off), w.unit)} too ${off > 0 ? 'long' : 'short'}: the others agree without it. It is left out; take it again.`,
  );
  const suspects =
    fix.suspects.length > 0
      ? [
          `These readings contradict one another, so they give no place, and there are too few to tell which is wrong: ${fix.suspects.map(w.reading).join('; ')}.${best ? ` Take one to the ${best.name} as well.` : ''}`,
        ]
      : [];
  const mirror = fix.mirror
    ? [
        `The points lie in one plane, or nearly, so a place on the other side of it fits as well, ${formatLength(
          distance(fix.mirror, fix.position),
          w.unit,
        )} away; the one nearer to the plan is taken.${best ? ` A tape to the ${best.name} settles it.` : ''}`,
      ]
    : [];
  return [...blunders, ...suspects, ...mirror];
}

/** Why there is no place yet, and what to take next. */
export function unfixedWords(
  { why }: Extract<FixAnswer, { ok: false }>,
  count: number,
  next: readonly ReferencePoint[],
  { name }: FixWording,
): string {
  const more =
    next.length > 0 ? ` Best take a tape to: ${next.map((one) => one.name).join('; ')}.` : '';
  if (why === 'few')
    return count === 0
      ? `Nothing was measured to the ${name} yet; three readings fix it, a fourth checks them.${more}`
      : `${count === 1 ? 'One reading does' : `${count} readings do`} not fix the ${name}: three are the least, and a fourth checks them.${more}`;
  if (why === 'line')
    return `The points taken so far lie along one line, so the ${name} could stand anywhere round it.${more}`;
  return `The ${name} lies almost in the plane of the points taken so far: they hardly tell how far it stands off it.${more}`;
}
