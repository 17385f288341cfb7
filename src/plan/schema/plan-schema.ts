/** The plan contract as a schema: lenient about what is missing, strict about what is wrong. */
import * as v from 'valibot';
import { DEEPEST_POCKET, DEFAULT_SAMPLE_RATE_HZ, isSimple, type Role } from '../../geometry';
import { ROLES } from '../names';
import { MOST_CORNERS, THICKEST_WALL } from '../pocket-limits';
import {
  angle,
  byName,
  coordinate,
  FAR,
  fields,
  id,
  list,
  mustBe,
  number,
  object,
  oneOf,
  positive,
  text,
  triples,
  vec3,
  yesOrNo,
} from './values';

export const CURRENT_VERSION = 1;
export const FORMAT = 'earpath-plan';
export const UNTITLED = 'Untitled plan';

/** Larger than any speaker, mm. */
const LARGEST_SPEAKER = 1000;

/** More than any car holds, litres. */
const MOST_LITRES = 10_000;

const side = oneOf(['left', 'right']);
const optional = v.optional;

/** Standard air at sea level, as ISO 9613-1 and IEC 61094-2 take it: 20 °C, 101.325 kPa. */
const AIR = { temperatureC: 20, relativeHumidityPercent: 50, pressureKPa: 101.325 };

const air = object({
  temperatureC: optional(number(-60, 100), AIR.temperatureC),
  relativeHumidityPercent: optional(number(0, 100), AIR.relativeHumidityPercent),
  pressureKPa: optional(number(30, 120), AIR.pressureKPa),
});

const panel = object({
  id,
  corners: v.strictTuple([vec3, vec3, vec3, vec3], mustBe('four corners [x, y, z]')),
  reflectivity: optional(number(0, 1)),
  mountable: optional(yesOrNo),
});

const cabin = object({
  template: optional(id, 'none'),
  wheelSide: optional(side, 'left'),
  dimensions: optional(byName(coordinate, 'an object of numbers')),
  panels: optional(list(panel)),
  measured: optional(
    byName(
      object({
        depthBehind: optional(number(0, FAR)),
        airspaceBehind: optional(number(0, MOST_LITRES)),
      }),
      'an object of panels',
    ),
  ),
});

const seat = object({
  id,
  head: optional(vec3),
  facingDeg: optional(angle),
  earSpacing: optional(positive(1000)),
  slide: optional(number(-2000, 2000)),
  reclineDeg: optional(number(-90, 90)),
  occupantHeight: optional(number(500, 2500)),
});

const size = number(0, FAR);
const direction = v.pipe(
  vec3,
  v.check(([x, y, z]) => x !== 0 || y !== 0 || z !== 0, 'must have a length, got [0, 0, 0]'),
);

const SHAPES = {
  box: {
    shape: v.literal('box'),
    center: vec3,
    size: v.strictTuple([size, size, size], mustBe('three lengths')),
    turnDeg: optional(v.strictTuple([angle, angle, angle], mustBe('three angles'))),
  },
  ring: {
    shape: v.literal('ring'),
    center: vec3,
    axis: direction,
    diameter: positive(FAR),
    thickness: positive(FAR),
  },
  capsule: { shape: v.literal('capsule'), from: vec3, to: vec3, radius: positive(FAR) },
  mesh: {
    shape: v.literal('mesh'),
    vertices: triples('vertices', (n) =>
      typeof n === 'number' && Math.abs(n) <= FAR
        ? null
        : typeof n === 'number'
          ? `must be between ${-FAR} and ${FAR}, got ${n}`
          : mustBe('a number')({ input: n }),
    ),
    triangles: triples('triangles', (n) =>
      Number.isInteger(n) && (n as number) >= 0
        ? null
        : mustBe('the number of a vertex, counted from 0')({ input: n }),
    ),
  },
} as const;

/** A body of one of the four shapes, with more fields of its own. */
const bodyWith = <const E extends v.ObjectEntries>(more: E) =>
  v.variant(
    'shape',
    [
      fields({ ...more, ...SHAPES.box }),
      fields({ ...more, ...SHAPES.ring }),
      fields({ ...more, ...SHAPES.capsule }),
      fields({ ...more, ...SHAPES.mesh }),
    ],
    mustBe('one of "box", "ring", "capsule", "mesh"'),
  );

const mount = object({
  panel: id,
  u: number(0, 1),
  v: number(0, 1),
  standoff: optional(number(0, 1000)),
});

const aim = v.variant(
  'kind',
  [
    fields({ kind: v.literal('direction'), direction: vec3 }),
    fields({ kind: v.literal('point'), point: vec3 }),
    fields({ kind: v.literal('seat'), seat: id }),
    fields({ kind: v.literal('normal') }),
  ],
  mustBe('one of "direction", "point", "seat", "normal"'),
);

const frequency = positive(1_000_000);

/** One more than there are frequencies in the longest text read would be a mistake. */
const MOST_POINTS = 100_000;

const row = (name: string, low: number, high: number) =>
  v.pipe(
    v.array(number(low, high), mustBe('a list of numbers')),
    v.maxLength(MOST_POINTS, `must hold at most ${MOST_POINTS} ${name}`),
  );

const response = object({
  offAxisDeg: number(0, 180),
  frequencyHz: row('frequencies', 0, 1_000_000),
  levelDb: row('levels', -1000, 1000),
});

const crossover = object({
  below: id,
  above: id,
  family: oneOf(['butterworth', 'linkwitz-riley']),
  order: number(1, 8),
  frequencyHz: frequency,
});

/** fs, Qts and Vas: beyond these a number was mistyped. */
const smallSignal = object({
  resonanceHz: positive(100_000),
  q: positive(1000),
  vasLitres: positive(MOST_LITRES),
});

/** Rings are as large as speakers at most, and a little larger. */
const LARGEST_RING = 1200;

const ring = object({
  outer: optional(positive(LARGEST_RING)),
  bore: optional(positive(LARGEST_RING)),
  leastThickness: optional(positive(100)),
  rimRadius: optional(number(0, 100)),
  seat: optional(oneOf(['proud', 'sunk'])),
  flangeThickness: optional(positive(100)),
  screwCircle: optional(positive(LARGEST_RING)),
  screws: optional(number(2, 24)),
});

const pocket = object({
  id,
  panel: id,
  outline: v.pipe(
    v.array(
      v.strictTuple([number(0, 1), number(0, 1)], mustBe('two numbers [u, v]')),
      mustBe('a list of corners [u, v]'),
    ),
    v.minLength(3, 'must have three corners or more'),
    v.maxLength(MOST_CORNERS, `must have at most ${MOST_CORNERS} corners`),
    v.check((outline) => isSimple(outline), 'must not cross itself'),
  ),
  depth: positive(DEEPEST_POCKET),
  lies: optional(oneOf(['behind', 'before'])),
  wall: optional(number(0, THICKEST_WALL)),
  speakers: optional(list(id), () => []),
});

const speaker = object({
  id,
  role: oneOf(ROLES as readonly Role[]),
  pair: optional(id),
  side: optional(side),
  position: optional(vec3),
  mount: optional(mount),
  aim: optional(aim),
  diaphragm: optional(positive(LARGEST_SPEAKER)),
  bandHz: optional(
    v.pipe(
      v.strictTuple([frequency, frequency], mustBe('two frequencies')),
      v.check(
        ([low, high]) => low < high,
        ({ input: [low, high] }) => `must run from low to high, got ${low} and ${high}`,
      ),
    ),
  ),
  body: optional(
    object({
      flange: positive(LARGEST_SPEAKER),
      cutout: positive(LARGEST_SPEAKER),
      depth: positive(LARGEST_SPEAKER),
      airspaceLitres: optional(number(0, MOST_LITRES)),
    }),
  ),
  ring: optional(ring),
  responses: optional(list(response)),
  inverted: optional(yesOrNo),
  smallSignal: optional(smallSignal),
});

/** A second after the start of the sound it has left any car; loops of processors stay below it too. */
const LATEST = 10_000;
const time = number(-LATEST, LATEST);

const measured = object({
  speaker: id,
  seat: id,
  at: oneOf(['head', 'left-ear', 'right-ear']),
  time,
  sd: positive(LATEST),
  delay: optional(number(0, LATEST)),
  method: oneOf(['edge', 'correlation']),
  sampleRateHz: positive(1_000_000),
  file: optional(text),
});

const readingEnd = v.variant(
  'kind',
  [
    fields({ kind: v.literal('speaker'), speaker: id }),
    fields({ kind: v.literal('head'), seat: id }),
    fields({ kind: v.literal('ear'), seat: id, side }),
    fields({ kind: v.literal('reference'), reference: id }),
  ],
  mustBe('one of "speaker", "head", "ear", "reference"'),
);

const reading = object({
  from: readingEnd,
  to: readingEnd,
  distance: positive(FAR),
  by: oneOf(['tape', 'sound']),
  sd: optional(positive(FAR)),
});

const option = object({
  id,
  title: optional(text),
  speakers: optional(list(speaker), () => []),
  untied: optional(list(id)),
  crossovers: optional(list(crossover)),
  pockets: optional(list(pocket)),
  measured: optional(list(measured)),
  readings: optional(list(reading)),
});

export const planSchema = object({
  format: v.literal(FORMAT, mustBe(`"${FORMAT}"`)),
  version: v.number(mustBe('a version number')),
  title: optional(text, UNTITLED),
  story: optional(text),
  air: optional(air, () => ({ ...AIR })),
  cabin: optional(cabin, () => ({ template: 'none', wheelSide: 'left' as const })),
  seats: optional(list(seat), () => []),
  obstacles: optional(list(bodyWith({ id }))),
  keepClear: optional(list(bodyWith({ id, reason: optional(text, '') }))),
  options: list(option),
  alignment: optional(
    object({
      seat: optional(id),
      sampleRateHz: optional(number(1000, 10_000_000), DEFAULT_SAMPLE_RATE_HZ),
      by: optional(oneOf(['seat', 'seats'])),
      seats: optional(list(object({ id, weight: positive(1000) }))),
    }),
    () => ({ sampleRateHz: DEFAULT_SAMPLE_RATE_HZ }),
  ),
});
