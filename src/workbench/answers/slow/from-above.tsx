import { memo, useCallback, useId, useRef } from 'react';
import {
  isReached,
  pathOf,
  type WaveState,
  waveStates,
  weightOf,
} from '../../../exchange/picture-strip';
import { headShape, type PlanWindow, type Side, type Spot } from '../../../geometry';
import { useSession } from '../../../store';
import { useEachMoment } from '../../../store/slow-motion';
import type { ShownMotion } from './shown-motion';

interface FromAboveProps {
  shown: ShownMotion;
  window: PlanWindow;
  /** CSS px. */
  width: number;
}

/**
 * The car from above, cut at the height of the ears, with every speaker's wave as it is now. What
 * moves is changed in place, so that no component is rendered for a frame. What it shows stands in
 * the table beside it, so it is hidden from those who cannot see it.
 */
export function FromAbove({ shown, window, width }: FromAboveProps) {
  const { car, motion, seat } = shown;
  const id = useId();
  const drawing = useRef<SVGSVGElement>(null);
  const draw = useCallback(
    (time: number) => {
      const svg = drawing.current;
      if (!svg) return;
      const groups = svg.querySelectorAll<SVGGElement>('[data-wave]');
      const states = waveStates(motion, time, car.height);
      for (const [i, state] of states.entries()) {
        const group = groups[i];
        if (group) moveWave(group, state);
      }
      for (const ear of svg.querySelectorAll<SVGElement>('[data-ear]'))
        ear.dataset.reached = String(isReached(motion, ear.dataset.ear as Side, time));
    },
    [motion, car],
  );
  useEachMoment(draw);
  const [wide, deep] = [window.right - window.left, window.rear - window.front];
  /** mm of car to a pixel: pens are sized for the eye, not for the car. */
  const px = wide / width;
  const cut = car.outline.length > 2 ? `url(#${id}cut)` : undefined;
  return (
    <svg
      ref={drawing}
      className="from-above"
      viewBox={`${window.left} ${window.front} ${wide} ${deep}`}
      width={width}
      height={deep / px}
      aria-hidden="true"
      strokeWidth={px}
    >
      <Car car={car} cut={`${id}cut`} px={px} />
      <g clipPath={cut}>
        {motion.waves.map(({ speaker, role, side }) => (
          <g key={speaker} className={side ?? 'neither'} data-wave={speaker}>
            <circle className="slow-ball" data-part="ball" r="0" />
            <circle
              className="slow-front"
              data-part="front"
              r="0"
              strokeWidth={(0.6 + 0.8 * weightOf(role)) * px}
              strokeDasharray={side === 'right' ? `${6 * px} ${4 * px}` : undefined}
            />
            <path className="slow-way" data-part="way" strokeWidth={1.2 * px} />
            <circle className="slow-come" data-part="come" r={3.5 * px} />
          </g>
        ))}
      </g>
      {motion.waves.map(({ speaker, side, centre }) => (
        <SpeakerMark key={speaker} id={speaker} side={side} at={[centre[1], centre[0]]} px={px} />
      ))}
      <Head shape={headShape(seat)} px={px} />
    </svg>
  );
}

/** Puts one wave where it is now. */
function moveWave(group: SVGGElement, { stage, centre, ball, front, come }: WaveState): void {
  group.dataset.stage = stage;
  const [cx, cy] = centre;
  const put = (part: string, attributes: Record<string, number | string>) => {
    const element = group.querySelector(`[data-part="${part}"]`);
    for (const [name, value] of Object.entries(attributes))
      element?.setAttribute(name, String(value));
  };
  put('ball', { cx, cy, r: ball });
  put('front', { cx, cy, r: front });
  put('way', { d: come ? pathOf([...come.passed, come.at], false) : '' });
  const at = come?.at;
  put('come', at ? { cx: at[0], cy: at[1], visibility: 'visible' } : { visibility: 'hidden' });
}

/** The pens of the car, CSS px. */
const WIDTHS = { edge: 0.8, seat: 1, wheel: 1.2, wall: 3, glass: 1.2 } as const;

const Car = memo(function Car({
  car,
  cut,
  px,
}: {
  car: ShownMotion['car'];
  cut: string;
  px: number;
}) {
  const outline = pathOf(car.outline, true);
  return (
    <>
      <clipPath id={cut}>
        <path d={outline} />
      </clipPath>
      <path className="slow-ground" d={outline} />
      {car.lines.map(({ kind, points, closed }, i) => (
        <path
          // biome-ignore lint/suspicious/noArrayIndexKey: lines of one car never change places
          key={i}
          className={`slow-${kind}`}
          d={pathOf(points, closed)}
          strokeWidth={WIDTHS[kind] * px}
        />
      ))}
    </>
  );
});

function Head({ shape, px }: { shape: ReturnType<typeof headShape>; px: number }) {
  return (
    <g className="slow-head" strokeWidth={1.6 * px}>
      <path d={pathOf(shape.skull, true)} />
      <path d={pathOf(shape.nose, false)} />
      {(['left', 'right'] as const).map((ear) => (
        <circle
          key={ear}
          className="slow-ear"
          data-ear={ear}
          cx={shape.ears[ear][0]}
          cy={shape.ears[ear][1]}
          r={3.4 * px}
        />
      ))}
    </g>
  );
}

interface SpeakerMarkProps {
  id: string;
  side: Side | null;
  at: Spot;
  px: number;
}

/** Left a square, right a circle, neither a lozenge; the chosen one filled. */
function SpeakerMark({ id, side, at: [x, y], px }: SpeakerMarkProps) {
  const chosen = useSession(
    ({ selection }) => selection?.kind === 'speaker' && selection.id === id,
  );
  const r = 4.5 * px;
  const common = {
    className: `slow-speaker ${side ?? 'neither'}`,
    'data-chosen': chosen,
    strokeWidth: 1.4 * px,
  };
  if (side === 'left') return <rect {...common} x={x - r} y={y - r} width={2 * r} height={2 * r} />;
  if (side === 'right') return <circle {...common} cx={x} cy={y} r={1.05 * r} />;
  return (
    <path
      {...common}
      d={`M${x - 1.3 * r} ${y}l${1.3 * r} ${-1.3 * r} ${1.3 * r} ${1.3 * r} ${-1.3 * r} ${1.3 * r}z`}
    />
  );
}
