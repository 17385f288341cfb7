import { type KeyboardEvent, type PointerEvent, useRef } from 'react';
import type { FlatPanel, Point2 } from '../../../geometry';
import { cornerMayGo, movePocketCorner, removePocketCorner } from '../../../plan/edits';
import { formatLength, type LengthUnit, lengthNumber } from '../../../plan/units';
import { planStore } from '../../../store';
import type { DrawnPocket } from './pocket-groups';

export interface CornerProps {
  optionId: string;
  drawn: DrawnPocket;
  flat: FlatPanel;
  index: number;
  onPaper: (at: Point2) => Point2;
  scale: number;
  unit: LengthUnit;
  locked: boolean;
}

/** Arrow keys, mm: plain, with Shift, with Alt. As in the drawing of the car. */
const STEP = { plain: 1, shift: 10, alt: 0.1 } as const;

const WAYS: Readonly<Record<string, Point2>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

/** Half the side of what is drawn, and the reach of a finger, pixels. */
const HALF = 5;
const REACH = 20;

/** A corner of an outline: dragged, or moved by arrow keys; a whole drag or held key is one undo. */
export function Corner(props: CornerProps) {
  const { optionId, drawn, flat, index, onPaper, scale, unit, locked } = props;
  const { pocket, name } = drawn;
  const label = `move corner ${index + 1} of the ${name}`;
  /** Where the drag or key press began, mm, with the pocket as it was then. */
  const held = useRef<{ key: string | null; from: Point2; at: Point2; pointer: Point2 } | null>(
    null,
  );
  const spot = pocket.outline[index] as Point2;
  const at = flat.toFlat(spot);
  const [x, y] = onPaper(at);

  const mine = () => planStore.getState().gesture?.label === label;
  function begin(key: string | null, pointer: Point2): void {
    if (locked) return;
    planStore.beginGesture(label);
    held.current = { key, from: at, at, pointer };
  }
  /** Goes to a place on the paper, mm, unless edges would cross there. */
  function go(to: Point2): void {
    if (!mine()) return;
    const option = planStore.getState().plan.options.find(({ id }) => id === optionId);
    const start = option?.pockets?.find(({ id }) => id === pocket.id);
    const next = flat.fromFlat(to);
    if (start && cornerMayGo(start, index, next))
      planStore.moveGesture(movePocketCorner(optionId, pocket.id, index, next));
  }
  function end(keep: boolean): void {
    if (!held.current) return;
    held.current = null;
    if (!mine()) return;
    if (keep) planStore.commitGesture();
    else planStore.cancelGesture();
  }

  function onKeyDown(event: KeyboardEvent): void {
    if (event.ctrlKey || event.metaKey) return;
    if (event.key === 'Escape' && held.current) {
      event.stopPropagation();
      event.preventDefault();
      end(false);
      return;
    }
    if (event.key === 'Delete' || event.key === 'Backspace') {
      // The page would take it for the selected speaker.
      event.stopPropagation();
      event.preventDefault();
      if (!locked)
        planStore.edit(
          `remove corner ${index + 1} of the ${name}`,
          removePocketCorner(optionId, pocket.id, index),
        );
      return;
    }
    const way = WAYS[event.key];
    if (!way) return;
    event.preventDefault();
    event.stopPropagation();
    if (held.current && held.current.key !== event.key) end(true);
    if (!held.current) begin(event.key, [0, 0]);
    if (!held.current) return;
    const mm = event.shiftKey ? STEP.shift : event.altKey ? STEP.alt : STEP.plain;
    const [ax, ay] = held.current.at;
    held.current.at = inside([ax + way[0] * mm, ay + way[1] * mm], flat.size);
    go(held.current.at);
  }

  function onPointerDown(event: PointerEvent<SVGGElement>): void {
    if (event.button !== 0 || locked) return;
    event.currentTarget.setPointerCapture(event.pointerId);
    begin(null, [event.clientX, event.clientY]);
  }
  function onPointerMove(event: PointerEvent): void {
    if (!held.current || held.current.key !== null) return;
    const { from, pointer } = held.current;
    go([
      from[0] + (event.clientX - pointer[0]) / scale,
      from[1] - (event.clientY - pointer[1]) / scale,
    ]);
  }

  return (
    <g
      className="pocket-corner"
      role="slider"
      tabIndex={0}
      aria-label={`Corner ${index + 1} of the ${name}`}
      aria-valuemin={0}
      aria-valuemax={Number(lengthNumber(flat.size[0], unit))}
      aria-valuenow={Number(lengthNumber(at[0], unit).replace('−', '-'))}
      aria-valuetext={`${formatLength(at[0], unit)} across, ${formatLength(at[1], unit)} up`}
      aria-readonly={locked || undefined}
      onKeyDown={onKeyDown}
      onKeyUp={(event) => {
        if (held.current?.key === event.key) end(true);
      }}
      onBlur={() => end(true)}
      onPointerDown={onPointerDown}
      onPointerMove={onPointerMove}
      onPointerUp={() => end(true)}
      onPointerCancel={() => end(false)}
      onLostPointerCapture={() => {
        if (held.current?.key === null) end(false);
      }}
    >
      <circle className="pocket-reach" cx={x} cy={y} r={REACH} />
      <rect x={x - HALF} y={y - HALF} width={2 * HALF} height={2 * HALF} />
      <text x={x + HALF + 3} y={y - HALF - 1}>
        {index + 1}
      </text>
    </g>
  );
}

/** Held keys do not run away beyond the panel. */
const inside = ([x, y]: Point2, [wide, high]: Point2): Point2 => [
  Math.min(wide, Math.max(0, x)),
  Math.min(high, Math.max(0, y)),
];
