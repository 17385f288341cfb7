/** Words at the fan of the image. */
import { formatFrequency, formatNumber } from '../../plan/units';
import type { OctaveGroup } from '../image/octave-groups';
import type { LabelWant } from '../labels';
import type { ShownFan } from '../parts/image-part';
import { placeOf, type WordsFrame } from './want';

const CAPTION = 'Image of a centred sound: whole lines with delays and gains, dashed without';
const ON_EDGE = 'The image shows from above: Plan or Free';

/** @param shown null where the view has no room for the fan, or it is still being worked out */
export function imageWants(
  frame: WordsFrame,
  shown: ShownFan | null,
  onEdge: boolean,
): LabelWant[] {
  const caption: LabelWant = {
    id: 'fan:caption',
    kind: 'legend',
    text: onEdge ? ON_EDGE : CAPTION,
    x: 10,
    y: frame.size.height - 18,
    hidden: false,
    gap: 0,
    weight: 70,
  };
  if (!shown) return onEdge ? [caption] : [];
  return [caption, ...fanWants(frame, shown)];
}

function fanWants(frame: WordsFrame, { fan, faded }: ShownFan): LabelWant[] {
  return fan.labels.map(({ kind, group, deg, at, from, also }, n): LabelWant => {
    const text = group
      ? `${octaves(group)}: ${aside(group)}${kind === 'off' ? ', without' : ''}`
      : `${formatNumber(Math.abs(deg))}°`;
    return {
      id: `fan:${kind}:${n}`,
      kind: kind === 'on' ? 'octave' : 'fan',
      text,
      ...placeOf(frame, at),
      also: also.map((point) => placeOf(frame, point)),
      from: placeOf(frame, from),
      gap: 4,
      weight: { on: 66, degrees: 54, off: 22 }[kind],
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
