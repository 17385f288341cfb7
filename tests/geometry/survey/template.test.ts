import { describe, expect, test } from 'vitest';
import {
  buildCabin,
  type Ellipse,
  hourOf,
  inputOfSpeaker,
  type MarkTemplate,
  markTemplate,
  type PanelInput,
  type Point2,
  panelFrame,
  placeOfSpeaker,
  ringFrame,
  type SpeakerInput,
  type TapeReading,
  turnOf,
  type Vec3,
  wedgeRing,
} from '../../../src/geometry';
import { along, dot, sub } from '../../../src/geometry/vector';
import { cabinOf, mid, placedIn, planOf } from '../fit/boards';

const BODY = { flange: 84, cutout: 75, depth: 42 };

/** The board looks rearward; leaning so many degrees to the car's right. */
const leaning = (deg: number, standoff: number, more: Partial<SpeakerInput> = {}): SpeakerInput => {
  const a = (deg * Math.PI) / 180;
  return mid(BODY, {
    mount: { panel: 'board', u: 0.5, v: 0.5, standoff },
    aim: { kind: 'direction', direction: [Math.cos(a), Math.sin(a), 0] },
    ...more,
  });
};

function drawn(speaker: SpeakerInput, tapes: readonly TapeReading[] = []): MarkTemplate {
  const cabin = cabinOf(planOf({}, [speaker]));
  const [placed] = placedIn(cabin, [speaker]);
  const panel = cabin.panels.find(({ id }) => id === 'board') ?? null;
  const template = placed && markTemplate(panel, speaker, placed, tapes);
  if (!template) throw new Error('no template');
  return template;
}

const holds = ({ centre, half, turnDeg }: Ellipse, [x, y]: readonly [number, number]): number => {
  const turn = (turnDeg * Math.PI) / 180;
  const [dx, dy] = [x - centre[0], y - centre[1]];
  const [a, b] = [
    dx * Math.cos(turn) + dy * Math.sin(turn),
    -dx * Math.sin(turn) + dy * Math.cos(turn),
  ];
  return (a / half[0]) ** 2 + (b / half[1]) ** 2;
};

const radians = (deg: number): number => (deg * Math.PI) / 180;

/** The same points, in any order. */
function expectPoints(points: readonly Point2[], expected: readonly Point2[]): void {
  expect(points).toHaveLength(expected.length);
  for (const [x, y] of expected)
    expect(Math.min(...points.map(([a, b]) => Math.hypot(a - x, b - y)))).toBeLessThan(1e-9);
}

describe('the template of a spot', () => {
  test('straight on its panel: circles round the spot, true to the speaker’s own drawing', () => {
    const { cutout, flange, ring, middle, lean, screws, lift } = drawn(leaning(0, 0));
    expect(middle).toEqual([0, 0]);
    expect(cutout?.half).toEqual([37.5, 37.5]);
    expect(flange.half).toEqual([42, 42]);
    expect([ring, lean, screws]).toEqual([null, null, []]);
    expect(lift).toBe(0);
  });

  test('leaning: by hand, 20° to the right from 40 mm', () => {
    const angle = Math.PI / 9;
    const { cutout, middle, lean, low, high } = drawn(leaning(20, 40));
    // Looking forward at the board, the car's right is on the right: the axis leaves it to the left.
    expect(middle[0]).toBeCloseTo(-40 * Math.tan(angle), 9);
    expect(middle[1]).toBeCloseTo(0, 9);
    expect(lean?.deg).toBeCloseTo(20, 9);
    expect(lean?.way[0]).toBeCloseTo(1, 9);
    expect(cutout?.half[0]).toBeCloseTo(37.5 / Math.cos(angle), 9);
    expect(cutout?.half[1]).toBeCloseTo(37.5, 9);
    expect(low[0]).toBeCloseTo(-40 * Math.tan(angle) - 42 / Math.cos(angle), 9);
    expect(high[1]).toBeCloseTo(42, 9);
  });

  test('a body wholly before its panel needs no hole', () => {
    const behind = drawn(leaning(0, 41));
    expect([behind.plane, behind.cutout]).toEqual(['panel', expect.anything()]);
    // On a ring only wires go through the panel; without one a pod's own face is what is cut.
    const onRing = drawn(leaning(0, 42.5, { ring: {} }));
    expect([onRing.plane, onRing.cutout]).toEqual(['panel', null]);
    const pod = drawn(leaning(20, 80));
    expect(pod.plane).toBe('face');
    expect(pod.cutout?.half).toEqual([37.5, 37.5]);
    expect([pod.middle, pod.lean, pod.rays]).toEqual([[0, 0], null, []]);
  });

  test('a ring covers on paper just what the printed ring’s back covers', () => {
    const speaker = leaning(25, 40, { ring: { outer: 120 } });
    const { ring, cutout } = drawn(speaker);
    const [placed] = placedIn(cabinOf(planOf({}, [speaker])), [speaker]);
    const [input, place] = [inputOfSpeaker(speaker), placed && placeOfSpeaker(speaker, placed)];
    if (!input || !place || !ring || !cutout) throw new Error('no ring');
    const answer = wedgeRing(input, place);
    if (!answer.ok) throw new Error(answer.message);
    const frame = panelFrame(place.normal);
    const axes = ringFrame(place);
    const spot = along(place.position, place.normal, -place.standoff);
    const back = answer.ring.mesh.vertices
      .map(
        (p): Vec3 => along(along(along(place.position, axes.x, p[0]), axes.y, p[1]), axes.z, p[2]),
      )
      .filter((p) => Math.abs(dot(sub(p, spot), place.normal)) < 1e-6)
      .map((p) => [dot(sub(p, spot), frame.right), dot(sub(p, spot), frame.up)] as const);
    expect(back).toHaveLength(288);
    for (const point of back) {
      const [outside, bore] = [holds(ring, point), holds(cutout, point)];
      expect(Math.min(Math.abs(outside - 1), Math.abs(bore - 1))).toBeLessThan(1e-9);
    }
  });

  test('screws lie on their circle as it falls onto the panel, each where it is by hand', () => {
    const { screws, screwCircle } = drawn(
      leaning(25, 60, { ring: { screws: 5, screwCircle: 80 } }),
    );
    for (const screw of screws) expect(holds(screwCircle, screw)).toBeCloseTo(1, 9);
    const [c, t] = [Math.cos(radians(25)), Math.tan(radians(25))];
    // Leaning to the right it is thick to the left: from there on by 36° and steps of 72°.
    expectPoints(
      screws,
      [36, 108, 180, 252, 324].map((deg) => [
        -60 * t - (40 * Math.cos(radians(deg))) / c,
        40 * Math.sin(radians(deg)),
      ]),
    );
  });

  test('rays lead to the reference points of the tapes', () => {
    const reference = { id: 'p', name: 'a corner', point: [0, 300, 400] as Vec3 };
    const { rays } = drawn(leaning(0, 0), [{ reference, distance: 500 }]);
    expect(rays).toEqual([
      { reference: 'p', way: [expect.closeTo(0.6, 9), expect.closeTo(0.8, 9)] },
    ]);
  });

  test('there is none for a free point, a speaker without a body, or one that looks into its panel', () => {
    const speaker = leaning(0, 0);
    const cabin = cabinOf(planOf({}, [speaker]));
    const [placed] = placedIn(cabin, [speaker]);
    if (!placed) throw new Error('not placed');
    const panel = cabin.panels.find(({ id }) => id === 'board') ?? null;
    const { body: _, ...bodiless } = speaker;
    expect(markTemplate(null, speaker, placed, [])).toBeNull();
    expect(markTemplate(panel, bodiless, placed, [])).toBeNull();
    expect(markTemplate(panel, speaker, { ...placed, axis: [-1, 0, 0] }, [])).toBeNull();
    expect(markTemplate(panel, speaker, { ...placed, axis: null }, [])).toBeNull();
  });
});

/** A door's card 700 mm from the centreline, looking across the car; its middle at height 0. */
const door = (side: 'left' | 'right'): PanelInput => {
  const [y, front, rear] = [side === 'left' ? -700 : 700, -300, 300];
  const [first, last] = side === 'left' ? [rear, front] : [front, rear];
  return {
    id: 'board',
    corners: [
      [first, y, -300],
      [last, y, -300],
      [last, y, 300],
      [first, y, 300],
    ],
  };
};

function drawnOnDoor(side: 'left' | 'right', speaker: SpeakerInput, head: Vec3): MarkTemplate {
  const plan = planOf({ panels: [door(side)] }, [speaker]);
  const cabin = cabinOf({ ...plan, seats: [{ id: 'driver', head }] });
  const [placed] = placedIn(cabin, [speaker]);
  const template = placed && markTemplate(cabin.panels[0] ?? null, speaker, placed, []);
  if (!template) throw new Error('no template');
  return template;
}

const HEAD: Vec3 = [700, 350, 300];

describe('the template of a door', () => {
  test.each([
    // Looking left at the left door the front of the car is on the right, at the right door on the left.
    ['left', 1],
    ['right', -1],
  ] as const)('%s, leaning 20° rearward on a ring: by hand', (side, front) => {
    const [c, s] = [Math.cos(radians(20)), Math.sin(radians(20))];
    const speaker = mid(BODY, {
      mount: { panel: 'board', u: 0.5, v: 0.5, standoff: 40 },
      aim: { kind: 'direction', direction: [s, side === 'left' ? c : -c, 0] },
      ring: { outer: 110, screws: 3, screwCircle: 80 },
    });
    const { frame, lean, middle, screws, ring } = drawnOnDoor(side, speaker, HEAD);
    expect(frame.right[0]).toBeCloseTo(-front, 12);
    expect(frame.upIs).toBe('up');
    expect(lean?.deg).toBeCloseTo(20, 9);
    expect(lean?.way[0]).toBeCloseTo(-front, 9);
    expect(lean?.way[1]).toBeCloseTo(0, 9);
    // Rearward and inward from where it leaves the panel, so that lies to the front of the spot.
    const off = (40 * s) / c;
    expect(middle[0]).toBeCloseTo(front * off, 9);
    expect(middle[1]).toBeCloseTo(0, 9);
    expect(ring?.half[0]).toBeCloseTo(55 / c, 9);
    // Thick to the front: two screws there, 60° over and under the line, and one on it to the rear.
    const [half, high] = [40 * 0.5, 40 * Math.sqrt(0.75)];
    expectPoints(screws, [
      [front * (off + half / c), high],
      [front * (off + half / c), -high],
      [front * (off - 40 / c), 0],
    ]);
  });

  test.each([
    // From 660 mm left or right of the centreline at the head of a driver who sits on the right:
    // 1010 or 310 mm inward, 700 rearward, 300 up; the axis leaves the panel 40 mm before that.
    ['left', 1010, [-700, 300]],
    ['right', 310, [700, 300]],
  ] as const)('%s in right-hand drive, aimed at the driver: by hand', (side, inward, [x, y]) => {
    const speaker = mid(BODY, {
      mount: { panel: 'board', u: 0.5, v: 0.5, standoff: 40 },
      aim: { kind: 'seat', seat: 'driver' },
    });
    const { lean, middle, cutout } = drawnOnDoor(side, speaker, HEAD);
    const along = Math.hypot(x, y);
    expect(lean?.deg).toBeCloseTo((Math.atan2(along, inward) * 180) / Math.PI, 9);
    expect(lean?.way[0]).toBeCloseTo(x / along, 9);
    expect(lean?.way[1]).toBeCloseTo(y / along, 9);
    expect(middle[0]).toBeCloseTo((-40 * x) / inward, 9);
    expect(middle[1]).toBeCloseTo((-40 * y) / inward, 9);
    expect(cutout?.centre).toEqual(middle);
    expect(cutout?.turnDeg).toBeCloseTo((Math.atan2(y, x) * 180) / Math.PI, 9);
  });

  test('in right-hand drive is the mirror image of the other door’s in left-hand drive', () => {
    const of = (wheelSide: 'left' | 'right'): MarkTemplate => {
      const answer = buildCabin({ cabin: { template: 'compact-hatch', wheelSide } });
      if (!answer.ok) throw new Error(answer.error.message);
      const { cabin } = answer;
      const panel = cabin.panels.find(({ id }) => id === `door-lower-${wheelSide}`) ?? null;
      const speaker = mid(BODY, {
        mount: { panel: `door-lower-${wheelSide}`, u: 0.3, v: 0.5, standoff: 70 },
        aim: { kind: 'seat', seat: `front-${wheelSide}` },
        ring: { screws: 5, screwCircle: 80, outer: 100 },
      });
      const [placed] = placedIn(cabin, [speaker]);
      const template = placed && markTemplate(panel, speaker, placed, []);
      if (!template) throw new Error('no template');
      return template;
    };
    const [left, right] = [of('left'), of('right')];
    expect(left.lean?.deg).toBeGreaterThan(5);
    expect(left.screws).toHaveLength(5);
    const mirrored = ([x, y]: Point2): Point2 => [-x, y];
    expectPoints(right.screws, left.screws.map(mirrored));
    expectPoints([right.middle], [mirrored(left.middle)]);
    expectPoints([right.lean?.way ?? [0, 0]], [mirrored(left.lean?.way ?? [0, 0])]);
    expect(right.lean?.deg).toBeCloseTo(left.lean?.deg ?? 0, 9);
  });
});

describe('a panel as seen from the cabin', () => {
  test.each([
    ['the left door', [0, 1, 0], 'up', [-1, 0, 0]],
    ['the dash, seen forward', [1, 0, 0], 'up', [0, 1, 0]],
    ['the dash top, seen from above', [0, 0, 1], 'front', [0, 1, 0]],
  ] as const)('%s', (_, normal, upIs, right) => {
    const frame = panelFrame(normal);
    expect(frame.upIs).toBe(upIs);
    for (const k of [0, 1, 2]) expect(frame.right[k]).toBeCloseTo(right[k] as number, 9);
    expect(turnOf(frame, frame.right)).toBeCloseTo(90, 9);
    expect([frame.up, frame.right].map((way) => hourOf(frame, way))).toEqual([12, 3]);
  });
});
