import { useMemo } from 'react';
import type { Side, Vec3 } from '../../geometry';
import { CarLines, pathOf } from './car-lines';
import type { CarDrawing } from './draw-car';
import { placeMarks } from './place-marks';
import type { Box } from './raster';
import { ScaleBar } from './scale-bar';
import type { Point } from './visible-lines';

/** A speaker on a drawing. */
export interface Mark {
  id: string;
  letter: string;
  side?: Side;
  position: Vec3;
  /** The sound's way to the listener; `null`: not drawn. */
  way: readonly Vec3[] | null;
}

interface CarPictureProps {
  drawing: CarDrawing;
  /** What of it is shown, mm of the drawing. */
  crop: Box;
  /** mm of paper. */
  width: number;
  height: number;
  marks: readonly Mark[];
  /** The listener: middle of the head, and who it is. */
  listener: { head: Vec3; name: string } | null;
  /** With a bar true to paper; only where the drawing has one scale. */
  bar?: boolean;
  /** For screen readers. */
  label: string;
}

/** Half a head's height and more, mm: a ring round it does not hide it. */
const HEAD_RING = 135;
const LETTER = 2.7;
/** Kept free for the scale bar under a drawing, mm of paper. */
const BAR_STRIP = 6;

/** Paper per car, where a crop is fitted into a frame. */
export const scaleToFit = (crop: Box, width: number, height: number): number =>
  Math.min(width / (crop.right - crop.left), height / (crop.bottom - crop.top));

/** The car in one view with its speakers lettered and the sound's ways to one listener. */
export function CarPicture(props: CarPictureProps) {
  const { drawing, crop, width, height, marks, listener, bar, label } = props;
  const room = height - (bar ? BAR_STRIP : 0);
  const scale = scaleToFit(crop, width, room);
  const at = useMemo(() => {
    const [x0, y0] = [
      (width - (crop.right - crop.left) * scale) / 2 - crop.left * scale,
      (room - (crop.bottom - crop.top) * scale) / 2 - crop.top * scale,
    ];
    return ([x, y]: Point): Point => [x0 + x * scale, y0 + y * scale];
  }, [crop, width, room, scale]);
  const put = (point: Vec3): Point => {
    const [x, y] = drawing.camera.project(point);
    return at([x, y]);
  };
  const ways = marks.map(({ way }) => way?.map(put) ?? []);
  const anchors = marks.map(({ position }) => put(position));
  const head = listener && put(listener.head);
  const ring = Math.max(HEAD_RING * scale, 1.8);
  const nameWidth = listener ? listener.name.length * 0.82 : 0;
  const frame = { left: 0.5, top: 0.5, right: width - 0.5, bottom: room - 0.5 };
  const places = placeMarks(
    head ? [...anchors, head] : anchors,
    [
      ...marks.map(({ letter }) => [1.5 + 0.9 * letter.length, 2.1] as const),
      ...(head ? [[nameWidth, 1.8] as const] : []),
    ],
    frame,
    ways,
    [...anchors.map(() => 1.2), ring],
  );
  const nameAt = places[marks.length];
  return (
    <svg
      className="car-picture"
      viewBox={`0 0 ${width} ${height}`}
      style={{ width: `${width}mm`, height: `${height}mm` }}
      role="img"
      aria-label={label}
    >
      <CarLines drawing={drawing} at={at} />
      {ways.map((way, i) => (
        <WayLine key={marks[i]?.id} way={way} side={marks[i]?.side} />
      ))}
      {head && listener && nameAt && (
        <g>
          <circle
            cx={head[0]}
            cy={head[1]}
            r={ring}
            fill="none"
            stroke="#16150f"
            strokeWidth={0.35}
          />
          <Leader from={head} to={nameAt} gap={ring} />
          <rect
            x={nameAt[0] - nameWidth}
            y={nameAt[1] - 1.8}
            width={2 * nameWidth}
            height={3.6}
            rx={0.6}
            fill="white"
            fillOpacity={0.88}
          />
          <text
            x={nameAt[0]}
            y={nameAt[1] + 0.95}
            fontSize={LETTER}
            fontWeight={650}
            textAnchor="middle"
            fill="#16150f"
          >
            {listener.name}
          </text>
        </g>
      )}
      {marks.map(({ id, letter, side }, i) => (
        <Lettered
          key={id}
          letter={letter}
          side={side}
          anchor={anchors[i] as Point}
          place={places[i] as Point}
        />
      ))}
      {bar && <ScaleBar scale={scale} at={[1, height - 1.2]} />}
    </svg>
  );
}

const colourOf = (side: Side | undefined): string =>
  side === 'left' ? '#1b4f86' : side === 'right' ? '#7a2e6e' : '#3a382f';

/** Left solid, right dashed, neither dotted. */
function WayLine({ way, side }: { way: readonly Point[]; side: Side | undefined }) {
  if (way.length < 2) return null;
  const d = pathOf(way);
  const dash = side === 'right' ? '1.6 1' : side ? undefined : '0.4 0.9';
  return (
    <g fill="none" strokeLinecap="round" strokeLinejoin="round">
      <path d={d} stroke="white" strokeWidth={0.9} strokeOpacity={0.75} />
      <path d={d} stroke={colourOf(side)} strokeWidth={0.45} strokeDasharray={dash} />
    </g>
  );
}

function Leader({ from, to, gap }: { from: Point; to: Point; gap: number }) {
  const far = Math.hypot(to[0] - from[0], to[1] - from[1]);
  if (far <= gap) return null;
  const start: Point = [
    from[0] + ((to[0] - from[0]) * gap) / far,
    from[1] + ((to[1] - from[1]) * gap) / far,
  ];
  return <path d={pathOf([start, to])} stroke="#16150f" strokeWidth={0.2} fill="none" />;
}

function Lettered(props: { letter: string; side: Side | undefined; anchor: Point; place: Point }) {
  const { letter, side, anchor, place } = props;
  const colour = colourOf(side);
  const half = 1.5 + 0.9 * letter.length;
  return (
    <g>
      <Leader from={anchor} to={place} gap={0.9} />
      <circle cx={anchor[0]} cy={anchor[1]} r={1} fill="white" stroke={colour} strokeWidth={0.45} />
      <rect
        x={place[0] - half}
        y={place[1] - 2.1}
        width={2 * half}
        height={4.2}
        // Round for the right, square for the left: as dashes are for the ways.
        rx={side === 'right' ? 2.1 : 0.5}
        fill="white"
        stroke={colour}
        strokeWidth={0.4}
      />
      <text
        x={place[0]}
        y={place[1] + 0.98}
        fontSize={LETTER}
        fontWeight={700}
        textAnchor="middle"
        fill={colour}
      >
        {letter}
      </text>
    </g>
  );
}
