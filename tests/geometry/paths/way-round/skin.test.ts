import { describe, expect, test } from 'vitest';
import {
  along,
  buildCabin,
  type CabinModel,
  evaluatePlan,
  type PanelInput,
  type PlanInput,
  patchNormal,
  pointOnPatch,
  TEMPLATES,
  type Vec3,
} from '../../../../src/geometry';
import { tessellatePanel } from '../../../../src/geometry/cabin/tessellate-panel';
import { buildSkin } from '../../../../src/geometry/paths/way-round/skin';

/** Mulberry32, public domain: the same points at every run. */
function seeded(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

function cabinOf(cabin: PlanInput['cabin']): CabinModel {
  const answer = buildCabin({ cabin });
  if (!answer.ok) throw new Error(answer.error.message);
  return answer.cabin;
}

/**
 * How often the skin winds round a point, triangle by triangle, by the angle each is seen under:
 * the sum of its three corner angles on the sphere less π (Girard), with the sign of its face.
 */
function turnsRound({ panels }: CabinModel, p: Vec3): number {
  let sum = 0;
  for (const panel of panels) {
    if (panel.id.startsWith('seat-base')) continue;
    const { vertices, triangles } = tessellatePanel(panel);
    for (const [i, j, k] of triangles) {
      const [a, b, c] = [i, j, k].map((n) => unit(less(vertices[n] as Vec3, p))) as [
        Vec3,
        Vec3,
        Vec3,
      ];
      const excess = corner(a, b, c) + corner(b, c, a) + corner(c, a, b) - Math.PI;
      sum += excess * Math.sign(inner(a, outer(b, c)));
    }
  }
  return sum / (4 * Math.PI);
}

const less = (a: Vec3, b: Vec3): Vec3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const inner = (a: Vec3, b: Vec3) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const outer = (a: Vec3, b: Vec3): Vec3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const unit = (a: Vec3): Vec3 => {
  const size = Math.hypot(...a);
  return [a[0] / size, a[1] / size, a[2] / size];
};

/** The angle at `a` of a triangle on the unit sphere. */
function corner(a: Vec3, b: Vec3, c: Vec3): number {
  const [p, q] = [outer(a, b), outer(a, c)];
  return Math.atan2(Math.hypot(...outer(p, q)), inner(p, q));
}

const CARS = TEMPLATES.filter((_, i) => i % 4 === 0).flatMap(({ id }) =>
  (['left', 'right'] as const).map((wheelSide) => ({ template: id, wheelSide })),
);

describe('the skin', () => {
  test.each(CARS)(
    'parts a listener from every point outside and from none inside: $template, $wheelSide',
    (car) => {
      const cabin = cabinOf(car);
      const skin = buildSkin(cabin.panels);
      const random = seeded(20);
      const count = { inside: 0, outside: 0 };
      const ears = cabin.seats.flatMap(({ head, ears }) => [head, ears.left, ears.right]);
      for (let i = 0; i < 120; i++) {
        const from: Vec3 = [
          -600 + 3800 * random(),
          -1000 + 2000 * random(),
          -100 + 1500 * random(),
        ];
        const turns = Math.abs(turnsRound(cabin, from));
        const is = turns > 0.9 ? 'inside' : turns < 0.1 ? 'outside' : null;
        if (!is) continue;
        count[is] += 1;
        for (const to of ears)
          expect(skin.between(from, to, null) !== null, `${from} ${is}, from ${to}`).toBe(
            is === 'outside',
          );
      }
      expect(count.inside).toBeGreaterThan(15);
      expect(count.outside).toBeGreaterThan(15);
    },
  );

  const car = { template: 'compact-hatch', wheelSide: 'left' } as const;
  const behindScreen = (cabin: CabinModel, by = 60): Vec3 => {
    const screen = cabin.panels.find(({ id }) => id === 'screen');
    if (!screen) throw new Error('a car has a windscreen');
    const { patch } = screen;
    return along(pointOnPatch(patch, 0.3, 0.2), patchNormal(patch, 0.3, 0.2), -by);
  };
  const headOf = (cabin: CabinModel) => cabin.seats[0]?.head as Vec3;

  test('names the panel the speaker stands beyond', () => {
    const cabin = cabinOf(car);
    const found = buildSkin(cabin.panels).between(behindScreen(cabin), headOf(cabin), null);
    expect(found?.id).toBe('screen');
    const inFront = behindScreen(cabin, -60);
    expect(buildSkin(cabin.panels).between(inFront, headOf(cabin), null)).toBeNull();
  });

  const board = (id: string): PanelInput => ({
    id,
    corners: [
      [500, -300, 700],
      [500, 300, 700],
      [500, 300, 900],
      [500, -300, 900],
    ],
  });

  test('is the same whatever boards the plan puts into the cabin, and unknown where one takes a panel’s place', () => {
    const more = cabinOf({ ...car, panels: [board('shelf')] });
    const spot = behindScreen(more);
    expect(buildSkin(more.panels).between(spot, headOf(more), null)?.id).toBe('screen');
    expect(buildSkin(more.panels).between([300, 0, 800], headOf(more), null)).toBeNull();
    const other = cabinOf({ ...car, panels: [board('roof')] });
    expect(buildSkin(other.panels).between(spot, headOf(other), null)).toBeNull();
  });

  test('keeps a speaker inside whose line leaves and enters it again close by, and once more farther on', () => {
    /** Six boards round a box, looking out of it, or into it. */
    const boards = (id: string, low: Vec3, high: Vec3, looks: 'out' | 'in'): PanelInput[] =>
      [0, 1, 2].flatMap((k) =>
        [low, high].map((end, side): PanelInput => {
          const [i, j] = [(k + 1) % 3, (k + 2) % 3];
          const at = (a: Vec3, b: Vec3): Vec3 => {
            const p = [0, 0, 0];
            p[k] = end[k] as number;
            p[i] = a[i] as number;
            p[j] = b[j] as number;
            return p as unknown as Vec3;
          };
          const round = [at(low, low), at(high, low), at(high, high), at(low, high)];
          const isTurned = (side === 1) !== (looks === 'out');
          return {
            id: `${id}-${k}-${side}`,
            corners: (isTurned ? round.reverse() : round) as [Vec3, Vec3, Vec3, Vec3],
          };
        }),
      );
    const { panels } = cabinOf({
      template: 'none',
      wheelSide: 'left',
      panels: [
        ...boards('room', [0, 0, 0], [1000, 1000, 1000], 'in'),
        ...boards('fin', [101, 200, 200], [103, 800, 800], 'out'),
        ...boards('beam', [500, 200, 200], [600, 800, 800], 'out'),
      ],
    });
    const skin = buildSkin(panels.map((panel) => ({ ...panel, given: false, ofSkin: true })));
    const spot = { panel: 'fin-0-0', standoff: 8, normal: [-1, 0, 0] as Vec3 };
    const to: Vec3 = [900, 520, 510];
    expect(skin.between([100, 500, 500], to, spot)).toBeNull();
    expect(skin.between([100, 500, 500], to, null)).toBeNull();
    // In the beam it is outside, and behind the room's wall.
    expect(skin.between([550, 500, 500], to, null)?.id).toBe('beam-0-1');
    expect(skin.between([-50, 100, 100], to, null)?.id).toBe('room-0-0');
  });

  test('lets nothing through to a speaker whose stand-off takes it beyond the windscreen, and says so', () => {
    const answer = evaluatePlan({
      air: { temperatureC: 20, relativeHumidityPercent: 50, pressureKPa: 101.325 },
      cabin: car,
      options: [
        {
          id: 'a',
          title: 'A',
          speakers: [
            {
              id: 'm',
              role: 'midrange',
              bandHz: [300, 2500],
              mount: { panel: 'dash-top-left', u: 0.3, v: 0.05, standoff: 80 },
            },
          ],
        },
      ],
      alignment: { seat: 'front-left', sampleRateHz: 48000 },
    });
    if (!answer.ok) throw new Error(answer.error.message);
    const [arrival] = answer.options[0]?.seats[0]?.arrivals ?? [];
    expect(arrival?.line).toBe('blocked');
    expect(arrival?.path).toBe(arrival?.direct);
    expect(arrival?.reasons).toContain(
      'the speaker stands outside the cabin, beyond the windscreen',
    );
  });
});
