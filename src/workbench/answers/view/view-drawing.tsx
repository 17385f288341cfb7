import type { PillarView } from '../../../geometry';
import { viewDegrees } from '../../fit/view-words';
import { type Sight, type Spot, type ViewPlan, viewPlan } from './view-plan';

/** mm from the eye to the arc that shows the angle. */
const ARC = 330;
const EYE = 11;
/** Never smaller than its letter, CSS px. */
const LEAST_EYE = 9;

const at = ([x, y]: Spot): string => `${x.toFixed(1)} ${y.toFixed(1)}`;
const line = (...spots: Spot[]): string => `M${spots.map(at).join('L')}`;

/**
 * One pillar from above: the eyes to the left, the pillar with what stands on it to the right, both
 * lines of sight, and between them what neither eye sees. `width`: what it is drawn in, CSS px.
 */
export function ViewDrawing({ view, width }: { view: PillarView; width: number }) {
  const plan = viewPlan(view);
  if (!plan) return null;
  const { box, after, before, head, pillar, cuts, pods } = plan;
  // Text and pens are sized for the eye, not for the car.
  const px = box.width / width;
  const podded = pods.length > 0;
  const shut = `url(#hidden-${view.side})`;
  return (
    <svg
      className="view-drawing"
      viewBox={`${box.x} ${box.y} ${box.width} ${box.height}`}
      width={width}
      height={box.height / px}
      role="img"
      aria-label={`The ${view.side} A-pillar from above, with the lines of sight past it`}
    >
      <defs>
        <pattern
          id={`hidden-${view.side}`}
          width={6 * px}
          height={6 * px}
          patternUnits="userSpaceOnUse"
          patternTransform="rotate(45)"
        >
          <path className="view-hatch" d={`M0 0V${6 * px}`} strokeWidth={1.6 * px} />
        </pattern>
      </defs>
      <g fill="none" strokeWidth={1.4 * px}>
        <path
          className="view-hidden"
          fill={shut}
          d={`${line(after.outer, after.outerEnd, after.innerEnd, after.inner)}Z`}
        />
        {podded && (
          <g className="view-before" strokeDasharray={`${5 * px} ${4 * px}`} strokeWidth={px}>
            <path d={line(before.eye, before.outerEnd)} />
            <path d={line(before.otherEye, before.innerEnd)} />
          </g>
        )}
        <path
          className="view-parallel"
          strokeDasharray={`${2 * px} ${3 * px}`}
          strokeWidth={px}
          d={line(after.otherEye, after.parallelEnd)}
        />
        <path className="view-pillar" d={`${line(...pillar)}Z`} />
        {cuts.map((cut, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: the lower one, then the upper one
          <path key={i} className="view-cut" d={`${line(...cut)}Z`} />
        ))}
        {pods.map((pod, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: pods have no other name here
          <path key={i} className="view-pod" d={`${line(...pod)}Z`} />
        ))}
        <g className="view-sight">
          <path d={line(after.eye, after.outerEnd)} />
          <path d={line(after.otherEye, after.innerEnd)} />
        </g>
        <Angle sight={after} px={px} deg={view.afterDeg} />
        <Eyes sight={after} head={head} px={px} left={view.side === 'left'} />
        <Ahead plan={plan} px={px} />
      </g>
    </svg>
  );
}

function Angle({ sight, px, deg }: { sight: Sight; px: number; deg: number | null }) {
  const { otherEye, innerEnd, parallelEnd } = sight;
  const to = (end: Spot, far: number): Spot => {
    const [x, y] = [end[0] - otherEye[0], end[1] - otherEye[1]];
    const size = Math.sqrt(x * x + y * y) || 1;
    return [otherEye[0] + (x / size) * far, otherEye[1] + (y / size) * far];
  };
  const [a, b] = [to(parallelEnd, ARC), to(innerEnd, ARC)];
  const below = b[1] > a[1];
  const under = below ? Math.max(a[1], b[1]) + 17 * px : Math.min(a[1], b[1]) - 7 * px;
  return (
    <>
      <path
        className="view-angle"
        strokeWidth={2.2 * px}
        d={`M${at(a)}A${ARC} ${ARC} 0 0 ${below ? 1 : 0} ${at(b)}`}
      />
      <text className="view-text" x={b[0]} y={under} fontSize={14 * px} textAnchor="middle">
        {viewDegrees(deg)}
      </text>
    </>
  );
}

function Eyes({ sight, head, px, left }: { sight: Sight; head: Spot; px: number; left: boolean }) {
  return (
    <>
      <path className="view-neck" strokeWidth={px} d={line(sight.eye, head, sight.otherEye)} />
      <circle className="view-head" cx={head[0]} cy={head[1]} r={3 * px} />
      {[sight.eye, sight.otherEye].map(([x, y], i) => (
        <g key={i === 0 ? 'own' : 'other'}>
          <circle className="view-eye" cx={x} cy={y} r={Math.max(EYE, LEAST_EYE * px)} />
          <text className="view-letter" x={x} y={y + 4 * px} fontSize={11 * px} textAnchor="middle">
            {(i === 0) === left ? 'L' : 'R'}
          </text>
        </g>
      ))}
    </>
  );
}

/** Which way the car looks: a small arrow in the corner. */
function Ahead({ plan: { ahead, box }, px }: { plan: ViewPlan; px: number }) {
  const long = 13 * px;
  const middle: Spot = [box.x + 24 * px, box.y + box.height - 22 * px];
  const tip: Spot = [middle[0] + ahead[0] * long, middle[1] + ahead[1] * long];
  const back = (turn: number): Spot => {
    const [c, s] = [Math.cos(turn), Math.sin(turn)];
    const [x, y] = [-ahead[0] * 6 * px, -ahead[1] * 6 * px];
    return [tip[0] + x * c - y * s, tip[1] + x * s + y * c];
  };
  return (
    <g className="view-ahead" strokeWidth={1.4 * px}>
      <path d={line([middle[0] - ahead[0] * long, middle[1] - ahead[1] * long], tip)} />
      <path d={line(back(0.5), tip, back(-0.5))} />
      <text
        className="view-text"
        x={middle[0] + 16 * px}
        y={middle[1] + 16 * px}
        fontSize={12 * px}
      >
        ahead
      </text>
    </g>
  );
}
