/** Words at the fan of the image. */
import { formatFrequency, formatNumber } from '../../plan/units';
import type { OctaveGroup } from '../image/octave-groups';
import type { LabelWant } from '../labels';
import type { ShownFan } from '../parts/image-part';
import { placeOf, type WordsFrame } from './want';

const CAPTION = 'image: whole lines with delays and gains, dashed without';

export function imageWants(frame: WordsFrame, { fan, faded }: ShownFan): LabelWant[] {
  return fan.labels.map(({ kind, group, deg, at, also }, n): LabelWant => {
    const text =
      kind === 'caption'
        ? CAPTION
        : group
          ? `${octaves(group)}: ${aside(group)}${kind === 'off' ? ', without' : ''}`
          : `${formatNumber(Math.abs(deg))}°`;
    return {
      id: `fan:${kind}:${n}`,
      kind: kind === 'on' ? 'octave' : 'fan',
      text,
      ...placeOf(frame, at),
      also: also.map((point) => placeOf(frame, point)),
      gap: 0,
      weight: { on: 56, degrees: 54, off: 22, caption: 21 }[kind],
      faded,
      data: { fan: kind },
    };
  });
}

/** "500 Hz", "63–250 Hz", "500 Hz – 2 kHz". */
function octaves({ lowHz, highHz }: OctaveGroup): string {
  const [low, high] = [formatFrequency(lowHz), formatFrequency(highHz)];
  if (lowHz === highHz) return low;
  const [number, unit] = low.split(' ');
  return unit === high.split(' ')[1] ? `${number}–${high}` : `${low} – ${high}`;
}

/** "13° R", "90° L or more", "ahead". */
function aside({ deg, atLimit }: OctaveGroup): string {
  const whole = Math.round(Math.abs(deg));
  if (whole === 0) return 'ahead';
  return `${whole}° ${deg < 0 ? 'L' : 'R'}${atLimit ? ' or more' : ''}`;
}
