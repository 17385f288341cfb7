import type { SeatImage } from '../../../geometry';
import { formatFrequency, NO_VALUE } from '../../../plan/units';

export type ImageBand = SeatImage['on'][number];

/** What the sentence is about, Hz: where a stage is heard best. A choice of ours. */
export const TOLD_HZ = [250, 4000] as const;

/** Nearer to straight ahead than this a lean is not called one, degrees. A choice of ours. */
const LEAN_DEG = 3;

/** Spread no wider than this it is still called ahead, degrees. A choice of ours. */
const AHEAD_DEG = 10;

/** Degrees, negative to the left; `atLimit`: that far at least. */
export interface Angle {
  deg: number;
  atLimit: boolean;
}

/** Where a centre-panned sound seems to stand, over the octaves that tell it. */
export type Stand =
  | { kind: 'unknown'; why: string }
  | { kind: 'told'; from: number; to: number; least: Angle; most: Angle };

/** Sums up the octaves within {@link TOLD_HZ}, or all of them where none of those has an angle. */
export function standOf(bands: readonly ImageBand[]): Stand {
  const known = bands.filter(({ lateralDeg }) => lateralDeg !== null);
  const inside = known.filter(
    ({ frequencyHz }) => frequencyHz >= TOLD_HZ[0] && frequencyHz <= TOLD_HZ[1],
  );
  const told = inside.length > 0 ? inside : known;
  const [first] = told;
  const last = told[told.length - 1];
  if (!first || !last) return { kind: 'unknown', why: bands[0]?.reason ?? 'no octave is played' };
  const angles = told
    .map(({ lateralDeg, atLimit }) => ({ deg: lateralDeg as number, atLimit }))
    .sort((a, b) => a.deg - b.deg);
  return {
    kind: 'told',
    from: first.frequencyHz,
    to: last.frequencyHz,
    least: angles[0] as Angle,
    most: angles[angles.length - 1] as Angle,
  };
}

const orMore = ({ atLimit }: Angle): string => (atLimit ? ' or more' : '');

/** "stands within 4° of straight ahead", "leans 7° to 15° to the right", … */
export function standWords({ least, most }: Stand & { kind: 'told' }): string {
  const [left, right] = [Math.round(least.deg), Math.round(most.deg)];
  if (left >= LEAN_DEG || right <= -LEAN_DEG) {
    const side = left > 0 ? 'right' : 'left';
    const [near, far] = left > 0 ? [least, most] : [most, least];
    const [from, to] = [near, far].map(({ deg }) => `${Math.abs(Math.round(deg))}°`);
    return `leans ${from === to ? to : `${from} to ${to}`}${orMore(far)} to the ${side}`;
  }
  const within = Math.max(-left, right);
  if (within <= AHEAD_DEG) return `stands within ${within}° of straight ahead`;
  return `is spread from ${angleWords(least.deg, least.atLimit)} to ${angleWords(most.deg, most.atLimit)}`;
}

/**
 * "With delays and gains a centre-panned sound stands within 4° of straight ahead from 250 Hz to
 * 4 kHz at the front left seat; without them it leans 12° to 30° to the left."
 * @param seat its name
 */
export function imageSentence(image: SeatImage, seat: string): string {
  const on = standOf(image.on);
  const off = standOf(image.off);
  if (on.kind === 'unknown') return `No image can be told at the ${seat}.`;
  const words = `With delays and gains a centre-panned sound ${standWords(on)} ${range(on)} at the ${seat}`;
  return off.kind === 'unknown' ? `${words}.` : `${words}; without them it ${standWords(off)}.`;
}

function range({ from, to }: Stand & { kind: 'told' }): string {
  if (from === to) return `at ${formatFrequency(from)}`;
  return `from ${formatFrequency(from)} to ${formatFrequency(to)}`;
}

/** "13° right", "ahead", "90° left or more"; a dash where there is no angle. */
export function angleWords(deg: number | null, atLimit: boolean): string {
  if (deg === null) return NO_VALUE;
  const whole = Math.round(Math.abs(deg));
  if (whole === 0) return 'ahead';
  return `${whole}° ${deg < 0 ? 'left' : 'right'}${atLimit ? ' or more' : ''}`;
}
