import { type KeyboardEvent, useCallback, useRef } from 'react';
import type { Side } from '../../../geometry';
import { formatTime } from '../../../plan/units';
import { slowMotionStore, useEachMoment, useSlowMotion } from '../../../store/slow-motion';
import { useWidth } from '../../parts/use-width';
import { timeAxis } from '../time-axis';
import type { Shown } from './shown-motion';

/** Half of the slider's thumb, px: the time axis begins and ends in its middle. */
const INSET = 10;
const HIGH = 30;
/** While it plays and has the focus, the slider tells its value no oftener than this, ms of watching. */
const TELL_EVERY = 1000;

/**
 * The clock's slider under a ruler on which every arrival at the head is marked; one row of marks
 * for each option.
 */
export function Ruler({ shown, valueText }: { shown: Shown; valueText: string }) {
  const [box, width] = useWidth<HTMLDivElement>(320);
  const hand = useRef<SVGPathElement>(null);
  const slider = useRef<HTMLInputElement>(null);
  const told = useRef(0);
  const playing = useSlowMotion((state) => state.playing);
  const { end, options } = shown;
  const perMs = (width - 2 * INSET) / Math.max(end, 0.001);
  const draw = useCallback(
    (time: number) => {
      hand.current?.setAttribute('transform', `translate(${INSET + time * perMs} 0)`);
      const range = slider.current;
      if (!range) return;
      // A screen reader reads a slider it stands on at every change.
      const heard = slowMotionStore.getState().playing && document.activeElement === range;
      const now = performance.now();
      if (heard && now - told.current < TELL_EVERY) return;
      told.current = now;
      range.value = String(time);
    },
    [perMs],
  );
  useEachMoment(draw);
  const ticks = timeAxis([0, end], width, INSET).ticks;
  return (
    <div className="slow-ruler" ref={box}>
      <svg width={width} height={HIGH + 18 * (options.length - 1)} aria-hidden="true">
        {ticks.map(({ time, label }) => (
          <g key={label} transform={`translate(${INSET + time * perMs} 0)`}>
            <path className="tick-line" d={`M0 14V${HIGH + 18}`} />
            {INSET + time * perMs < width - 14 && (
              <text
                className="tick-label"
                y="11"
                textAnchor={time === 0 ? 'start' : 'middle'}
                x={time === 0 ? -INSET : 0}
              >
                {time === 0 ? '0 ms' : label}
              </text>
            )}
          </g>
        ))}
        {options.map(({ motion }, row) =>
          motion.reaches
            .filter(({ at }) => at === 'head')
            .map(({ speaker, time }) => (
              <Mark
                key={`${motion.option} ${speaker}`}
                side={motion.waves.find((wave) => wave.speaker === speaker)?.side ?? null}
                x={INSET + time * perMs}
                y={22 + 18 * row}
                time={time}
              />
            )),
        )}
        <path ref={hand} className="slow-hand" d={`M0 14V${HIGH + 18}`} />
      </svg>
      <input
        ref={slider}
        className="slow-slider"
        type="range"
        aria-label="Moment, ms"
        min={0}
        max={end}
        step={0.01}
        defaultValue={slowMotionStore.getState().time}
        aria-valuetext={playing ? undefined : valueText}
        onChange={(event) => slowMotionStore.goTo(Number(event.target.value))}
        onKeyDown={onSliderKey}
      />
    </div>
  );
}

/** Arrows go a step, Page up and down ten of them, Home and End to the ends. */
function onSliderKey(event: KeyboardEvent<HTMLInputElement>): void {
  const steps: Record<string, number> = {
    ArrowRight: 1,
    ArrowUp: 1,
    ArrowLeft: -1,
    ArrowDown: -1,
    PageUp: 10,
    PageDown: -10,
  };
  const { end } = slowMotionStore.getState();
  const by = steps[event.key];
  if (by !== undefined) slowMotionStore.step(by);
  else if (event.key === 'Home') slowMotionStore.goTo(0);
  else if (event.key === 'End') slowMotionStore.goTo(end);
  else return;
  event.preventDefault();
}

/** An arrival at the head: open until it happens. Left a square, right a circle, neither a lozenge. */
function Mark({ side, x, y, time }: { side: Side | null; x: number; y: number; time: number }) {
  const there = useSlowMotion((state) => time <= state.time);
  const common = { className: `slow-mark ${side ?? 'neither'}`, 'data-there': there };
  const title = <title>{formatTime(time)}</title>;
  if (side === 'left')
    return (
      <rect {...common} x={x - 5} y={y - 5} width="10" height="10" rx="1">
        {title}
      </rect>
    );
  if (side === 'right')
    return (
      <circle {...common} cx={x} cy={y} r="5.5">
        {title}
      </circle>
    );
  return (
    <path {...common} d={`M${x - 6} ${y}l6-6 6 6-6 6z`}>
      {title}
    </path>
  );
}
