import type { SeatImage, Side } from '../../../geometry';
import { fanLabels } from './fan-labels';
import { type FanRay, fanRays, fanSize, gatherDirections, onRing } from './fan-layout';
import { HeadFromAbove } from './head-from-above';

/** Where one speaker stands as seen from the head. */
export interface Standing {
  side: Side;
  deg: number;
}

interface FanProps {
  image: SeatImage;
  width: number;
  /** For orientation, on the outer arc. */
  speakers: readonly Standing[];
  /** Of another seat beside it: only where the sound stands with delays and gains. */
  small?: boolean;
}

const TENS = Array.from({ length: 19 }, (_, i) => i * 10 - 90);

/**
 * The fan in front of a head, seen from above: for each octave, on a ring of its own, a ray to
 * where a centre-panned sound seems to stand, with delays and gains and without. Drawn beside a
 * table of the same angles, so hidden from those who cannot see it.
 */
export function Fan({ image, width, speakers, small }: FanProps) {
  const edge = small ? 12 : 40;
  const size = fanSize(width, small ? 10 : 46);
  const rays = fanRays(image, size);
  const { outer, head } = size;
  const height = outer + edge + head * 1.4;
  const angles = small ? [] : TENS.filter((deg) => deg % 30 === 0);
  return (
    <svg
      className="fan"
      width={width}
      height={height}
      viewBox={`${-width / 2} ${-outer - edge} ${width} ${height}`}
      aria-hidden="true"
    >
      {TENS.map((deg) => {
        const [from, to] = [onRing(deg, head * 1.5), onRing(deg, outer)];
        return (
          <path
            key={deg}
            className={deg === 0 ? 'fan-ahead' : 'fan-tens'}
            d={`M${from.x} ${from.y}L${to.x} ${to.y}`}
          />
        );
      })}
      <path className="fan-rim" d={arc(-90, 90, outer)} />
      {angles.map((deg) => {
        const at = onRing(deg, outer + 25);
        return (
          <text key={deg} className="fan-angle" x={at.x} y={at.y + 4} textAnchor="middle">
            {Math.abs(deg)}°
          </text>
        );
      })}
      <HeadFromAbove radius={head} />
      {rays.map((ray) => (
        <Ray key={ray.octaveHz} ray={small ? { ...ray, offDeg: null } : ray} from={head * 1.15} />
      ))}
      {(small ? [] : fanLabels(rays)).map(({ octaveHz, text, x, y, anchor }) => (
        <text key={octaveHz} className="fan-octave" x={x} y={y} textAnchor={anchor}>
          {text}
        </text>
      ))}
      {gatherDirections(speakers).map((group) => {
        const deg = group.reduce((sum, one) => sum + one.deg, 0) / group.length;
        const [first] = group;
        return (
          first && <Speakers key={`${first.side}${deg}`} side={first.side} deg={deg} r={outer} />
        );
      })}
    </svg>
  );
}

function arc(from: number, to: number, radius: number): string {
  const [a, b] = [onRing(from, radius), onRing(to, radius)];
  return `M${a.x} ${a.y}A${radius} ${radius} 0 0 ${to > from ? 1 : 0} ${b.x} ${b.y}`;
}

/** Both rays of one octave and the way between them along their ring. */
function Ray({ ray, from }: { ray: FanRay; from: number }) {
  const { onDeg, offDeg, radius, octaveHz } = ray;
  const line = (deg: number) => {
    const [a, b] = [onRing(deg, from), onRing(deg, radius)];
    return `M${a.x} ${a.y}L${b.x} ${b.y}`;
  };
  const mark = (deg: number, className: string) => {
    const { x, y } = onRing(deg, radius);
    // What the ears go by: a point for times, a lozenge for levels.
    if (ray.cue === 'time') return <circle className={className} cx={x} cy={y} r="4" />;
    return <path className={className} d={`M${x - 5} ${y}l5-5 5 5-5 5z`} />;
  };
  return (
    <g data-octave={octaveHz}>
      {offDeg !== null && <path className="fan-off" d={line(offDeg)} />}
      {onDeg !== null && <path className="fan-on" d={line(onDeg)} />}
      {onDeg !== null && offDeg !== null && Math.abs(onDeg - offDeg) > 1 && (
        <path className="fan-shift" d={arc(offDeg, onDeg, radius)} />
      )}
      {offDeg !== null && mark(offDeg, 'fan-off-mark')}
      {onDeg !== null && mark(onDeg, 'fan-on-mark')}
    </g>
  );
}

/** L in a square, R in a dashed ring, as beside the speakers' names. */
function Speakers({ side, deg, r }: { side: Side; deg: number; r: number }) {
  const { x, y } = onRing(deg, r);
  return (
    <g className={`fan-speaker ${side}`}>
      {side === 'left' ? (
        <rect x={x - 8} y={y - 8} width="16" height="16" rx="2" />
      ) : (
        <circle cx={x} cy={y} r="8.5" />
      )}
      <text x={x} y={y + 4} textAnchor="middle">
        {side === 'left' ? 'L' : 'R'}
      </text>
    </g>
  );
}
