import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type BoxShape,
  buildCabin,
  type CabinModel,
  type CapsuleShape,
  createFitter,
  type PlacedSpeaker,
  patchNormal,
  pointOnPatch,
  type RingShape,
  type SpeakerInput,
  TEMPLATES,
} from '../../../src/geometry';
import { mirrorWords } from '../../../src/geometry/cabin/mirror';
import { groundAt, liftOf } from '../../../src/geometry/fit/panel-ground';
import { boxAxes } from '../../../src/geometry/paths/segment-hits';
import { along, dot, sub, type Vec3 } from '../../../src/geometry/vector';
import { box, capsule, heading, point, real, ring } from '../arbitraries';
import { placedIn } from './boards';

const carOf = (template: string, wheelSide: 'left' | 'right'): CabinModel => {
  const answer = buildCabin({ cabin: { template, wheelSide } });
  if (!answer.ok) throw new Error(answer.error.message);
  return answer.cabin;
};
const left = carOf('compact-hatch', 'left');
const right = carOf('compact-hatch', 'right');
const sided = left.panels.filter((p) => p.mountable && /-(left|right)$/.test(p.id));

const spot: fc.Arbitrary<SpeakerInput> = fc
  .record({
    panel: fc.constantFrom(...sided.map(({ id }) => id)),
    u: real(0, 1),
    v: real(0, 1),
    standoff: real(0, 40),
    cutout: real(30, 150),
    over: real(4, 20),
    depth: real(10, 90),
    aimed: fc.boolean(),
  })
  .map(({ panel, u, v, standoff, cutout, over, depth, aimed }) => ({
    id: 'one',
    role: 'midrange',
    mount: { panel, u, v, standoff },
    aim: aimed ? { kind: 'seat', seat: 'front-left' } : { kind: 'normal' },
    body: { flange: cutout + over, cutout, depth },
  }));

const place = (cabin: CabinModel, speaker: SpeakerInput): PlacedSpeaker =>
  placedIn(cabin, [speaker])[0] as PlacedSpeaker;

const inLeft = createFitter(left);
const inRight = createFitter(right);

describe('fit, for any spot', () => {
  test('the quick answer is the full answer', () => {
    fc.assert(
      fc.property(spot, (speaker) => {
        const placed = place(left, speaker);
        const problems = inLeft(speaker, placed);
        expect(inLeft.fits(speaker, placed)).toBe(problems.length === 0);
        expect(inLeft.isKeptClear(speaker, placed)).toBe(problems.some(({ hard }) => hard));
      }),
      { numRuns: 300 },
    );
  });

  test('every problem has a sentence, and a number above nothing or none', () => {
    fc.assert(
      fc.property(spot, (speaker) => {
        for (const { by, sentence, hard, kind } of inLeft(speaker, place(left, speaker))) {
          expect(by === null || (by > 0 && Number.isFinite(by)), sentence).toBe(true);
          expect(sentence).not.toMatch(/NaN|Infinity|undefined/);
          expect(hard).toBe(kind === 'zone');
        }
      }),
      { numRuns: 300 },
    );
  });

  test('a deeper or wider body never fits where a smaller one does not', () => {
    fc.assert(
      fc.property(spot, real(0, 40), real(0, 30), (speaker, deeper, wider) => {
        const { flange, cutout, depth } = speaker.body as NonNullable<SpeakerInput['body']>;
        const larger = { flange: flange + wider, cutout: cutout + wider, depth: depth + deeper };
        const placed = place(left, speaker);
        if (inLeft.fits({ ...speaker, body: larger }, placed))
          expect(inLeft(speaker, placed)).toEqual([]);
      }),
      { numRuns: 500 },
    );
  });

  test('a mirrored car gives mirrored answers', () => {
    // Pedals, the rest of the left foot and what they need do not mirror.
    const feet = /^(pedals|clutch-foot|(footrest|toe-board|footwell-floor)-(left|right))$/;
    fc.assert(
      fc.property(spot, (speaker) => {
        const twin: SpeakerInput = {
          ...speaker,
          mount: {
            ...speaker.mount,
            panel: mirrorWords(speaker.mount?.panel ?? ''),
          } as NonNullable<SpeakerInput['mount']>,
          aim:
            speaker.aim?.kind === 'seat'
              ? { kind: 'seat', seat: 'front-right' }
              : { kind: 'normal' },
        };
        // Panels across the car are cut into triangles that do not mirror.
        const across = new Set(
          left.panels.map(({ id }) => id).filter((id) => !/-(left|right)$/.test(id)),
        );
        const told = (problems: ReturnType<typeof inLeft>, turn: (id: string) => string) =>
          new Map(
            problems
              .filter((p) => !feet.test(p.with ?? '') && !across.has(p.with ?? ''))
              .map(({ kind, with: other, by }) => [`${kind} ${turn(other ?? '')}`, by]),
          );
        const here = told(inLeft(speaker, place(left, speaker)), mirrorWords);
        const there = told(inRight(twin, place(right, twin)), (id) => id);
        for (const [some, others] of [
          [here, there],
          [there, here],
        ] as const)
          for (const [key, by] of some) {
            // Round solids are faceted, and facets do not mirror either.
            if (by !== null && by < 0.3) continue;
            expect(others.has(key), key).toBe(true);
            const other = others.get(key) ?? null;
            if (by !== null && other !== null) expect(Math.abs(by - other), key).toBeLessThan(0.3);
          }
      }),
      { numRuns: 300 },
    );
  });

  test('an obstacle or a zone more never makes anything fit', () => {
    fc.assert(
      fc.property(spot, fc.oneof(box, capsule, ring), fc.boolean(), (speaker, shape, asZone) => {
        const more: CabinModel = {
          ...left,
          obstacles: asZone
            ? left.obstacles
            : [...left.obstacles, { id: 'new', name: 'new', shape, given: true }],
          keepClear: asZone
            ? [...left.keepClear, { id: 'new', name: 'new', reason: '', shape, given: true }]
            : left.keepClear,
        };
        const placed = place(left, speaker);
        const before = inLeft(speaker, placed);
        const after = createFitter(more)(speaker, placed);
        expect(after.filter((p) => p.with !== 'new')).toEqual(before);
      }),
      { numRuns: 60 },
    );
  });
});

describe('the body against any solid', () => {
  /** Places all over the body: in its middle, on its skin, and in the flange. */
  const inside = (
    at: Vec3,
    axis: Vec3,
    body: { flange: number; cutout: number; depth: number },
  ) => {
    const other: Vec3 = Math.abs(axis[2]) < 0.9 ? [0, 0, 1] : [1, 0, 0];
    const n = patchFrame(axis, other);
    const out: Vec3[] = [];
    for (let k = 0; k <= 6; k++)
      for (let r = 0; r <= 3; r++)
        for (let i = 0; i < 12; i++) {
          const reach = ((k === 0 ? body.flange : body.cutout) / 2) * (r / 3) * 0.999;
          const t = (Math.PI * i) / 6;
          out.push(
            along(
              along(along(at, axis, (-body.depth * k) / 6), n[0], reach * Math.cos(t)),
              n[1],
              reach * Math.sin(t),
            ),
          );
        }
    return out;
  };
  const patchFrame = (axis: Vec3, other: Vec3): [Vec3, Vec3] => {
    const unit = (p: Vec3): Vec3 => {
      const l = Math.sqrt(dot(p, p));
      return [p[0] / l, p[1] / l, p[2] / l];
    };
    const cross = (a: Vec3, b: Vec3): Vec3 => [
      a[1] * b[2] - a[2] * b[1],
      a[2] * b[0] - a[0] * b[2],
      a[0] * b[1] - a[1] * b[0],
    ];
    const a = unit(cross(axis, other));
    return [a, cross(axis, a)];
  };

  test('meets it wherever a point of the body lies in a point of the solid, and clears it after moving by what it says', () => {
    let met = 0;
    const aside = real(-400, 400);
    const near = fc.tuple(aside, aside, aside);
    fc.assert(
      fc.property(
        fc.oneof(box, capsule, ring),
        point,
        near,
        heading,
        real(40, 200),
        real(10, 120),
        (shape, centre, offset, way, cutout, depth) => {
          const moved = recentred(shape, centre);
          const at: Vec3 = [centre[0] + offset[0], centre[1] + offset[1], centre[2] + offset[2]];
          const l = Math.sqrt(dot(way, way));
          const axis: Vec3 = [way[0] / l, way[1] / l, way[2] / l];
          const body = { flange: cutout + 20, cutout, depth };
          const zone = { id: 'z', name: 'z', reason: '', shape: moved, given: true };
          const bare: CabinModel = { ...left, obstacles: [], keepClear: [zone], panels: [] };
          const speaker: SpeakerInput = { id: 'one', role: 'midrange', position: at, body };
          const ask = (position: Vec3) =>
            createFitter(bare)(speaker, { speaker: 'one', position, axis, normal: null });
          const [problem] = ask(at);
          const touched = inside(at, axis, body).some((p) => signed(moved, p) < -0.1);
          if (touched) {
            met++;
            expect(problem?.kind).toBe('zone');
          }
          if (problem && problem.by !== null) {
            const clear = [1, -1].some(
              (way) => ask(along(at, axis, way * ((problem.by as number) + 0.05))).length === 0,
            );
            expect(clear).toBe(true);
          }
        },
      ),
      { numRuns: 400 },
    );
    expect(met).toBeGreaterThan(15);
  });

  type Any = BoxShape | CapsuleShape | RingShape;

  function recentred(shape: Any, centre: Vec3): Any {
    if (shape.shape !== 'capsule') return { ...shape, center: centre };
    const d = sub(shape.to, shape.from);
    const k = 400 / Math.max(400, Math.sqrt(dot(d, d)));
    return { ...shape, from: centre, to: along(centre, d, k) };
  }

  /** Exact distance to the solid's skin, negative inside, as far as this test needs it. */
  function signed(shape: Any, p: Vec3): number {
    if (shape.shape === 'capsule') {
      const d = sub(shape.to, shape.from);
      const t = Math.min(1, Math.max(0, dot(sub(p, shape.from), d) / (dot(d, d) || 1)));
      const q = sub(p, along(shape.from, d, t));
      return Math.sqrt(dot(q, q)) - shape.radius;
    }
    const m = sub(p, shape.center);
    if (shape.shape === 'ring') {
      const l = Math.sqrt(dot(shape.axis, shape.axis));
      const h = dot(m, shape.axis) / l;
      const out = Math.sqrt(Math.max(0, dot(m, m) - h * h)) - shape.diameter / 2;
      return Math.sqrt(out * out + h * h) - shape.thickness / 2;
    }
    return Math.max(
      ...boxAxes(shape).map((a, k) => Math.abs(dot(m, a)) - (shape.size[k] as number) / 2),
    );
  }
});

describe('the ground under a flange', () => {
  test('bows as its curvature says, on every mountable panel of every body style', () => {
    let [worst, most] = [0, 0];
    for (const { id } of TEMPLATES) {
      for (const panel of carOf(id, 'left').panels.filter((p) => p.mountable)) {
        const { bend, point, normal } = groundAt(panel, 0.5, 0.5);
        const radius = 45;
        const lift = liftOf(bend, radius, radius);
        // The panel's true height under the rim, by search.
        const heights: number[] = [];
        for (let i = 0; i < 16; i++) {
          const h = heightAt(panel.patch, point, normal, radius, (Math.PI * i) / 8);
          if (h !== null) heights.push(h);
        }
        if (heights.length < 16) continue;
        const true_ = Math.max(...heights) - Math.min(...heights);
        worst = Math.max(worst, Math.abs(true_ - lift));
        most = Math.max(most, true_);
      }
    }
    expect(most).toBeGreaterThan(0.5);
    expect(worst).toBeLessThan(0.3);
  });

  type Patch = CabinModel['panels'][number]['patch'];

  /** Height of the panel at a place of the tangent plane, by descending on (u, v); null off it. */
  function heightAt(patch: Patch, origin: Vec3, n: Vec3, radius: number, t: number): number | null {
    const side: Vec3 = Math.abs(n[2]) < 0.9 ? [0, 0, 1] : [1, 0, 0];
    const a0: Vec3 = sub(side, [n[0] * dot(side, n), n[1] * dot(side, n), n[2] * dot(side, n)]);
    const la = Math.sqrt(dot(a0, a0));
    const a: Vec3 = [a0[0] / la, a0[1] / la, a0[2] / la];
    const b: Vec3 = [
      n[1] * a[2] - n[2] * a[1],
      n[2] * a[0] - n[0] * a[2],
      n[0] * a[1] - n[1] * a[0],
    ];
    const want = [radius * Math.cos(t), radius * Math.sin(t)] as const;
    let [u, v] = [0.5, 0.5];
    for (let step = 0; step < 30; step++) {
      const at = (du: number, dv: number) => {
        const q = sub(pointOnPatch(patch, u + du, v + dv), origin);
        return [dot(q, a) - want[0], dot(q, b) - want[1]] as const;
      };
      const f = at(0, 0);
      const e = 1e-5;
      const fu = at(e, 0).map((x, k) => (x - (f[k] as number)) / e) as [number, number];
      const fv = at(0, e).map((x, k) => (x - (f[k] as number)) / e) as [number, number];
      const det = fu[0] * fv[1] - fu[1] * fv[0];
      if (det === 0) return null;
      u -= (f[0] * fv[1] - f[1] * fv[0]) / det;
      v -= (fu[0] * f[1] - fu[1] * f[0]) / det;
    }
    if (u < 0 || u > 1 || v < 0 || v > 1) return null;
    return dot(sub(pointOnPatch(patch, u, v), origin), n);
  }

  test('has the panel’s own normal', () => {
    for (const panel of sided) {
      const { normal } = groundAt(panel, 0.3, 0.6);
      expect(normal).toEqual(patchNormal(panel.patch, 0.3, 0.6));
    }
  });
});
