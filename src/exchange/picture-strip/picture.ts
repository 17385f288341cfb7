import {
  type CarFromAbove,
  headShape,
  type Moment,
  type PlanWindow,
  type Seat,
  type SlowMotion,
  type Spot,
} from '../../geometry';
import { CAR_PENS, colourOf, HEAD_PEN, type Pen, SPEAKER_PEN, weightOf } from './pens';
import { node, rounded, type SvgNode } from './svg-node';
import { isReached, type WaveState, waveStates } from './wave-state';

export interface PictureOf {
  car: CarFromAbove;
  seat: Seat;
  motion: SlowMotion;
  window: PlanWindow;
}

export interface PicturePlace {
  x: number;
  y: number;
  /** mm on paper; the height follows. */
  width: number;
  /** The name of the {@link carDefinition} of its row. */
  car: string;
}

export const heightFor = ({ left, right, front, rear }: PlanWindow, width: number): number =>
  (width * (rear - front)) / (right - left);

/** A tenth of a millimetre of car is finer than any pen. */
const tenth = (value: number): number => Math.round(value * 10) / 10;

/** SVG path data through places seen from above. */
export function pathOf(spots: readonly Spot[], closed: boolean): string {
  const d = spots.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${tenth(x)} ${tenth(y)}`).join('');
  return closed && d ? `${d}Z` : d;
}

const attributesOf = (pen: Pen, per: number) => ({
  fill: pen.fill,
  stroke: pen.stroke,
  strokeWidth: pen.width * per,
  strokeLinejoin: 'round',
});

/** The car once for all pictures of a row that are `width` mm wide on paper, and what cuts its waves. */
export function carDefinition({ car, window }: PictureOf, width: number, id: string): SvgNode {
  const per = (window.right - window.left) / width;
  const outline = pathOf(car.outline, true);
  return node(
    'defs',
    {},
    node('clipPath', { id: `${id}-cut` }, node('path', { d: outline })),
    node(
      'g',
      { id },
      node('path', { d: outline, ...attributesOf(CAR_PENS.ground, per) }),
      ...car.lines.map(({ kind, points, closed }) =>
        node('path', { d: pathOf(points, closed), ...attributesOf(CAR_PENS[kind], per) }),
      ),
    ),
  );
}

/** The car, the speakers, the listener and the waves at one moment, from above, cut at the ears. */
export function pictureAt(
  { car, seat, motion, window }: PictureOf,
  moment: Moment,
  { x, y, width, car: id }: PicturePlace,
): SvgNode {
  const across = window.right - window.left;
  const deep = window.rear - window.front;
  /** mm of car to a mm of paper: pens are sized for the paper. */
  const per = across / width;
  const line = (pen: Pen) => attributesOf(pen, per);
  const states = waveStates(motion, moment.time, car.height);
  const arriving = new Set(moment.arriving);
  const head = headShape(seat);
  const cut: SvgNode['attributes'] = car.outline.length > 2 ? { clipPath: `url(#${id}-cut)` } : {};
  return node(
    'svg',
    {
      x,
      y,
      width,
      height: heightFor(window, width),
      viewBox: [window.left, window.front, across, deep].map(rounded).join(' '),
    },
    node('use', { href: `#${id}` }),
    node('g', cut, ...states.map((state) => ballOf(state))),
    node('g', cut, ...states.flatMap((state) => frontOf(state, arriving, per))),
    ...states.flatMap((state) => wayOf(state, per)),
    ...states.map(({ wave, centre }) => speakerMark(wave.side, centre, per, line(SPEAKER_PEN))),
    node('path', { d: pathOf(head.skull, true), ...line(HEAD_PEN) }),
    node('path', { d: pathOf(head.nose, false), ...line(HEAD_PEN) }),
    ...(['left', 'right'] as const).map((ear) => {
      const [cx, cy] = head.ears[ear];
      const reached = isReached(motion, ear, moment.time);
      const pen = attributesOf({ ...HEAD_PEN, fill: reached ? HEAD_PEN.stroke : '#ffffff' }, per);
      return node('circle', { cx, cy, r: 0.5 * per, ...pen });
    }),
  );
}

function ballOf({ wave, centre: [cx, cy], ball, stage }: WaveState): SvgNode {
  const opacity = stage === 'past' ? 0.03 : 0.09;
  return node('circle', { cx, cy, r: ball, fill: colourOf(wave.side), fillOpacity: opacity });
}

/** mm on paper for a coming wave by weight; one that is past is thin, one arriving now is firm. */
const FRONT = [0.22, 0.35, 0.5] as const;

function frontOf(state: WaveState, arriving: ReadonlySet<string>, per: number): SvgNode[] {
  const { wave, centre, front, stage } = state;
  if (front === 0) return [];
  const now = arriving.has(wave.speaker);
  const width = (FRONT[weightOf(wave.role) - 1] as number) * (now ? 1.7 : 1);
  const past = stage === 'past' && !now;
  return [
    node('circle', {
      cx: centre[0],
      cy: centre[1],
      r: front,
      fill: 'none',
      stroke: colourOf(wave.side),
      strokeWidth: (past ? 0.15 : width) * per,
      strokeOpacity: past ? 0.45 : 1,
      ...(wave.side === 'right' && {
        strokeDasharray: `${rounded(1.3 * per)} ${rounded(0.8 * per)}`,
      }),
    }),
  ];
}

/** What comes round something: the bends behind it, and where it is. */
function wayOf({ wave, come }: WaveState, per: number): SvgNode[] {
  if (!come) return [];
  const colour = colourOf(wave.side);
  const way = pathOf([...come.passed, come.at], false);
  return [
    node('path', { d: way, fill: 'none', stroke: colour, strokeWidth: 0.2 * per }),
    node('circle', { cx: come.at[0], cy: come.at[1], r: 0.55 * per, fill: colour }),
  ];
}

/** Left a square, right a circle, neither a lozenge. */
function speakerMark(
  side: 'left' | 'right' | null,
  [x, y]: Spot,
  per: number,
  pen: SvgNode['attributes'],
): SvgNode {
  const r = 0.75 * per;
  const own = { ...pen, stroke: colourOf(side) };
  if (side === 'left')
    return node('rect', { x: x - r, y: y - r, width: 2 * r, height: 2 * r, ...own });
  if (side === 'right') return node('circle', { cx: x, cy: y, r: r * 1.08, ...own });
  return node('path', {
    d: pathOf(
      [
        [x - r * 1.3, y],
        [x, y - r * 1.3],
        [x + r * 1.3, y],
        [x, y + r * 1.3],
      ],
      true,
    ),
    ...own,
  });
}
