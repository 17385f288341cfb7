import { describe, expect, test } from 'vitest';
import {
  buildCabin,
  faceReadings,
  type MarkOut,
  markOut,
  nearestOnPatch,
  type PlanInput,
  placeSpeaker,
  pointOnPatch,
  type Vec3,
} from '../../../src/geometry';
import { patchPartials } from '../../../src/geometry/cabin/patch';
import { distance, dot } from '../../../src/geometry/vector';
import { demoPlan } from '../../../src/plan/demo';

function marksOf(plan: PlanInput, option = 0): MarkOut[] {
  const answer = buildCabin(plan);
  if (!answer.ok) throw new Error(answer.error.message);
  const { cabin } = answer;
  const panels = new Map(cabin.panels.map((panel) => [panel.id, panel]));
  const seats = new Map(cabin.seats.map((seat) => [seat.id, seat]));
  const speakers = plan.options[option]?.speakers ?? [];
  const placed = speakers.flatMap((speaker) => {
    const place = placeSpeaker(speaker, panels, seats);
    return place.ok ? [place.placed] : [];
  });
  return markOut(cabin, speakers, placed);
}

/** Numbers from 0 to 1, the same in each run (mulberry32). */
function seeded(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}

describe('marking out', () => {
  const plan = demoPlan();
  const marks = marksOf(plan);

  test('gives every speaker of the demo three tapes to named points, and says how well they fix it', () => {
    expect(marks).toHaveLength(plan.options[0]?.speakers.length as number);
    for (const { tapes, within95, spot } of marks) {
      expect(tapes.length).toBeGreaterThanOrEqual(3);
      expect(new Set(tapes.map(({ reference }) => reference.id)).size).toBe(tapes.length);
      for (const tape of tapes) {
        expect(tape.reference.name).not.toBe('');
        expect(tape.distance).toBeCloseTo(distance(tape.reference.point, spot), 9);
      }
      // Never better than the two best directions could make it, and usable with a pencil.
      expect(within95).toBeGreaterThan(3);
      expect(within95).toBeLessThan(20);
    }
  });

  test('an installer who tapes 3 mm wrong now and then lands within the stated error 95 times in 100', () => {
    const answer = buildCabin(plan);
    if (!answer.ok) throw new Error(answer.error.message);
    const random = seeded(20_261_125);
    const normal = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
    for (const mark of marks) {
      const panel = answer.cabin.panels.find(({ id }) => id === mark.panel);
      if (!panel) throw new Error(`${mark.speaker} is not on a panel`);
      const start = nearestOnPatch(panel.patch, mark.spot);
      const anchors = mark.tapes.slice(0, 3).map(({ reference }) => reference.point);
      let within = 0;
      for (let run = 0; run < 1000; run++) {
        const read = anchors.map((anchor) => distance(anchor, mark.spot) + 3 * normal());
        // The pencil goes where the three arcs on the panel come nearest to meeting.
        let [u, v] = [start.u, start.v];
        for (let step = 0; step < 6; step++) {
          const point = pointOnPatch(panel.patch, u, v);
          const { du, dv } = patchPartials(panel.patch, u, v);
          let [aa, ab, bb, ga, gb] = [0, 0, 0, 0, 0];
          anchors.forEach((anchor, n) => {
            const reach = distance(anchor, point);
            const way = point.map((x, k) => (x - (anchor[k] as number)) / reach) as unknown as Vec3;
            const [a, b, off] = [dot(way, du), dot(way, dv), (read[n] as number) - reach];
            aa += a * a;
            ab += a * b;
            bb += b * b;
            ga += a * off;
            gb += b * off;
          });
          const det = aa * bb - ab * ab;
          u += (bb * ga - ab * gb) / det;
          v += (aa * gb - ab * ga) / det;
        }
        if (distance(pointOnPatch(panel.patch, u, v), mark.spot) <= (mark.within95 as number))
          within++;
      }
      // 1000 runs of 95 %: standard deviation 6.9.
      expect(within, mark.speaker).toBeGreaterThan(925);
      expect(within, mark.speaker).toBeLessThan(975);
    }
  });

  test('the mirrored car is marked by the mirrored points', () => {
    const mirrored = marksOf({ ...plan, cabin: { ...plan.cabin, wheelSide: 'right' } });
    // The spots of a tied pair are mirror images, so the right one's mark is the left one's.
    // The pedals' order does not mirror, so the heel point does not either.
    const byHeel = ({ tapes }: MarkOut) => tapes.some(({ reference }) => reference.id === 'heel');
    const others = marks.filter((mark) => !byHeel(mark));
    expect(others.length).toBeGreaterThan(3);
    for (const mark of others) {
      const twin = mirrored.find(({ speaker }) => speaker === swap(mark.speaker));
      expect(twin?.within95).toBeCloseTo(mark.within95 as number, 9);
      expect(twin?.aboveSill).toBeCloseTo(mark.aboveSill as number, 9);
      expect(twin?.tapes.map(({ reference }) => swap(reference.id))).toEqual(
        mark.tapes.map(({ reference }) => reference.id),
      );
    }
  });

  test('takes near points where they do about as well as far ones', () => {
    for (const { tapes, speaker } of marks)
      for (const { distance: reach, reference } of tapes.slice(0, 3)) {
        expect(reach, `${speaker} from ${reference.name}`).toBeLessThan(1000);
        expect(reference.id).not.toBe('wheel-centre');
      }
  });

  test('heights are over the sill and the rails of the spot’s own side', () => {
    const left = marks.find(({ panel }) => panel === 'pillar-left') as MarkOut;
    const answer = buildCabin(plan);
    if (!answer.ok) throw new Error(answer.error.message);
    const at = (id: string) => answer.cabin.references.find((one) => one.id === id)?.point as Vec3;
    const [front, rear] = [at('sill-front-left'), at('sill-end-left')];
    const part = Math.min(1, Math.max(0, (left.spot[0] - front[0]) / (rear[0] - front[0])));
    expect(left.aboveSill).toBeCloseTo(left.spot[2] - (front[2] + part * (rear[2] - front[2])), 9);
    // The rails' bolts lie 20 mm over the heel plane.
    expect(left.aboveRail).toBeCloseTo(left.spot[2] - 20, 9);
  });

  test('without panels there is nothing to tape from, and that is said', () => {
    const [mark] = marksOf({
      ...plan,
      cabin: { template: 'none', wheelSide: 'left' },
      seats: [{ id: 'seat', head: [1000, 0, 800] }],
      alignment: { sampleRateHz: 48_000 },
      options: [{ id: 'a', speakers: [{ id: 's', role: 'tweeter', position: [0, 0, 0] }] }],
    });
    expect(mark?.tapes).toEqual([]);
    expect(mark?.within95).toBeNull();
    expect(mark?.reasons).toContain(
      'no three reference points within reach of a tape fix this spot',
    );
  });
});

const swap = (id: string) =>
  id.replace(/left|right/g, (word) => (word === 'left' ? 'right' : 'left'));

describe('the laser along the axis', () => {
  const wall = (id: string, x: number): NonNullable<PlanInput['cabin']['panels']>[number] => ({
    id,
    corners: [
      [x, -1000, -1000],
      [x, 1000, -1000],
      [x, 1000, 1000],
      [x, -1000, 1000],
    ],
  });
  const plan: PlanInput = {
    air: { temperatureC: 20, relativeHumidityPercent: 50, pressureKPa: 101.325 },
    cabin: { template: 'none', wheelSide: 'left', panels: [wall('front', 0), wall('back', 2000)] },
    seats: [{ id: 'seat', head: [1000, 300, 800] }],
    alignment: { sampleRateHz: 48_000 },
    options: [
      {
        id: 'a',
        speakers: [
          {
            id: 's',
            role: 'tweeter',
            position: [500, 0, 0],
            aim: { kind: 'direction', direction: [3, 1, 0] },
          },
        ],
      },
    ],
  };

  test('meets the wall opposite where the axis does', () => {
    const [mark] = marksOf(plan);
    expect(mark?.laser?.id).toBe('back');
    expect(mark?.laser?.point[0]).toBeCloseTo(2000, 1);
    expect(mark?.laser?.point[1]).toBeCloseTo(500, 1);
    expect(mark?.laser?.distance).toBeCloseTo(Math.hypot(1500, 500), 1);
    // No template, no named points.
    expect(mark?.laser?.near).toEqual([]);
  });

  test('meets what stands before the wall first', () => {
    const [mark] = marksOf({
      ...plan,
      obstacles: [{ id: 'post', shape: 'box', center: [1100, 200, 0], size: [200, 200, 200] }],
    });
    expect(mark?.laser?.id).toBe('post');
    expect(mark?.laser?.point[0]).toBeCloseTo(1000, 1);
  });
});

describe('inclinometer readings', () => {
  test('a face looking straight back is level across and plumb upward', () => {
    const [across, up] = faceReadings([1, 0, 0]);
    expect([across.held, up.held]).toEqual(['crosswise', 'upright']);
    expect(across.deg).toBeCloseTo(0, 12);
    expect(up.deg).toBeCloseTo(90, 9);
  });

  test('a face that looks 30° up leans back by as much', () => {
    const [, up] = faceReadings([Math.cos(Math.PI / 6), 0, Math.sin(Math.PI / 6)]);
    expect(up.deg).toBeCloseTo(60, 9);
    // Its upper edge is the one nearer the front.
    expect(up.along[0]).toBeLessThan(0);
  });

  test('a dash top is read lengthwise and crosswise', () => {
    const tilt = Math.PI / 18;
    const [lengthwise, crosswise] = faceReadings([Math.sin(tilt), 0, Math.cos(tilt)]);
    expect([lengthwise.held, crosswise.held]).toEqual(['lengthwise', 'crosswise']);
    // It falls rearward by 10°.
    expect(lengthwise.deg).toBeCloseTo(-10, 9);
    expect(crosswise.deg).toBeCloseTo(0, 9);
  });

  test('both edges lie in the face, whichever way it looks', () => {
    for (let n = 0; n < 200; n++) {
      const [a, b] = [n * 0.37, Math.acos(1 - (2 * (n + 0.5)) / 200)];
      const axis: Vec3 = [Math.sin(b) * Math.cos(a), Math.sin(b) * Math.sin(a), Math.cos(b)];
      for (const { along, deg } of faceReadings(axis)) {
        expect(dot(along, axis)).toBeCloseTo(0, 9);
        expect(Math.sin((deg * Math.PI) / 180)).toBeCloseTo(along[2], 9);
      }
    }
  });
});
