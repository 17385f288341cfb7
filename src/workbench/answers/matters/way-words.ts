import { direction, type Panel, pointOnPatch, type SpeakerInput, sub } from '../../../geometry';

/** How far along u or v the direction is read from: small against a panel's bend. */
const STEP = 0.01;

/** A part of the direction smaller than this is left out: some 17°. */
const LEAST = 0.3;

/**
 * Which way in the car a speaker goes when it moves along its panel: "forward and up". Empty where it
 * is on no panel.
 */
export function wayWords(
  speaker: SpeakerInput | undefined,
  panels: readonly Panel[],
  along: 'u' | 'v',
  sign: number,
): string {
  const mount = speaker?.mount;
  const panel = panels.find(({ id }) => id === mount?.panel);
  if (!mount || !panel) return '';
  const at = (d: number) =>
    pointOnPatch(panel.patch, mount.u + (along === 'u' ? d : 0), mount.v + (along === 'v' ? d : 0));
  const way = direction(sub(at(sign * STEP), at(-sign * STEP)));
  if (!way) return '';
  const [x, y, z] = way;
  // Outward is away from the middle of the car, as the speaker's side has it.
  const out = speaker.side === 'left' ? -y : y;
  const sideways = speaker.side
    ? (['outward', 'inward'] as const)
    : (['to the right', 'to the left'] as const);
  const parts = [
    { size: x, names: ['rearward', 'forward'] as const },
    { size: out, names: sideways },
    { size: z, names: ['up', 'down'] as const },
  ]
    .filter(({ size }) => Math.abs(size) >= LEAST)
    .sort((a, b) => Math.abs(b.size) - Math.abs(a.size));
  return parts.map(({ size, names }) => names[size > 0 ? 0 : 1]).join(' and ');
}
