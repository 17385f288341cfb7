import { describe, expect, it } from 'vitest';
import { evaluatePlan, type PlacedSpeaker } from '../../src/geometry';
import { demoPlan } from '../../src/plan/demo';
import type { Plan } from '../../src/plan/types';
import { geometriesAlive } from '../../src/scene/parts/bin';
import { createBodyPart } from '../../src/scene/parts/body-part';
import { createHeadsPart } from '../../src/scene/parts/heads-part';
import { createKit } from '../../src/scene/parts/kit';
import { createLinesPart } from '../../src/scene/parts/lines-part';
import { createObstaclesPart } from '../../src/scene/parts/obstacles-part';
import { createPanelMarks } from '../../src/scene/parts/panel-marks';
import { createPanelsPart } from '../../src/scene/parts/panels-part';
import { createReflectionsPart } from '../../src/scene/parts/reflections-part';
import { createSpeakersPart } from '../../src/scene/parts/speakers-part';
import { createZonesPart } from '../../src/scene/parts/zones-part';
import { createLook } from '../../src/scene/shading/look';

interface Evaluated {
  plan: Plan;
  answer: Extract<ReturnType<typeof evaluatePlan>, { ok: true }>;
}

function evaluated(plan: Plan): Evaluated {
  const answer = evaluatePlan(plan);
  if (!answer.ok) throw new Error(answer.error.message);
  return { plan, answer };
}

function makeParts() {
  const kit = createKit(createLook());
  const parts = {
    panels: createPanelsPart(kit),
    marks: createPanelMarks(kit),
    obstacles: createObstaclesPart(kit),
    zones: createZonesPart(kit),
    body: createBodyPart(kit),
    speakers: createSpeakersPart(kit),
    lines: createLinesPart(kit),
    reflections: createReflectionsPart(kit),
    heads: createHeadsPart(kit),
  };
  return {
    ...parts,
    draw({ plan, answer }: Evaluated): void {
      const { cabin } = answer;
      const option = answer.options[0];
      parts.panels.show(cabin.panels);
      parts.obstacles.show(cabin);
      parts.zones.show(cabin.keepClear, true);
      parts.body.show(cabin.bodyLines);
      parts.heads.show(cabin.seats, 'front-left', null);
      const placed = new Map<string, PlacedSpeaker>(
        option?.placed.map((one) => [one.speaker, one]) ?? [],
      );
      const inputs = plan.options[0]?.speakers ?? [];
      parts.speakers.show(
        inputs.flatMap((speaker) => {
          const at = placed.get(speaker.id);
          return at ? [{ speaker, placed: at }] : [];
        }),
        null,
        null,
      );
      const seat = option?.seats[0];
      parts.lines.show(
        seat?.head ?? [0, 0, 0],
        seat?.arrivals ?? [],
        placed,
        { selected: null, hovered: null, underneath: false },
        {
          meet: (id, ray, far) =>
            parts.obstacles.meet(id, ray, far) ?? parts.panels.meet(id, ray, far)?.point ?? null,
          pass: (id, from, to) =>
            parts.obstacles.pass(id, from, to) ?? parts.panels.pass(id, from, to),
        },
      );
      parts.reflections.show(seat?.head ?? [0, 0, 0], seat?.arrivals ?? [], placed, true);
      const blocking = new Set(seat?.arrivals.flatMap(({ blockedBy }) => blockedBy) ?? []);
      const reflecting = new Set(
        seat?.arrivals.flatMap(({ reflections }) => reflections.map(({ panel }) => panel)) ?? [],
      );
      const selected = cabin.panels[0]?.id ?? null;
      parts.marks.mark(parts.panels.drawn(), { blocking, grazed: new Set(), selected, reflecting });
    },
    end() {
      for (const part of Object.values(parts)) part.dispose();
      kit.dispose();
    },
  };
}

const withSeatHeight = (seatHeight: number): Plan => {
  const plan = demoPlan();
  return {
    ...plan,
    cabin: { ...plan.cabin, dimensions: { ...plan.cabin.dimensions, seatHeight } },
  };
};

describe('rebuilding the drawing', () => {
  it('leaves no more geometries behind after fifty rebuilds, and none at the end', () => {
    const before = geometriesAlive();
    const parts = makeParts();
    const [low, high] = [evaluated(withSeatHeight(270)), evaluated(withSeatHeight(285))];
    parts.draw(low);
    parts.draw(high);
    const once = geometriesAlive();
    expect(once).toBeGreaterThan(before + 20);
    for (let i = 0; i < 25; i++) {
      parts.draw(low);
      parts.draw(high);
    }
    expect(geometriesAlive()).toBe(once);
    parts.end();
    expect(geometriesAlive()).toBe(before);
  }, 60_000);

  it('keeps what did not change: a sliding seat leaves every panel and the wheel alone', () => {
    const parts = makeParts();
    const plan = demoPlan();
    parts.draw(evaluated(plan));
    const surface = parts.panels.solid().geometry;
    const before = parts.obstacles.solids();
    const slid: Plan = {
      ...plan,
      seats: [
        { id: 'front-left', slide: -20 },
        { id: 'front-right' },
        { id: 'rear-left' },
        { id: 'rear-right' },
      ],
    };
    const alive = geometriesAlive();
    parts.draw(evaluated(slid));
    expect(parts.panels.solid().geometry).toBe(surface);
    const after = parts.obstacles.solids();
    expect(after.map(({ geometry }) => geometry)).toEqual(before.map(({ geometry }) => geometry));
    after.forEach(({ geometry }, i) => {
      expect(geometry).toBe(before[i]?.geometry);
    });
    expect(geometriesAlive()).toBe(alive);
    // The cushion with its backrest, and the head restraint.
    const moved = after.filter(({ at }) => at.some((x) => x !== 0));
    expect(moved).toHaveLength(2);
    for (const { at } of moved) {
      expect(Math.abs(at[0] + 20)).toBeLessThan(1e-6);
      expect(Math.abs(at[1]) + Math.abs(at[2])).toBeLessThan(1e-6);
    }
    parts.end();
  });

  it('finds a slid seat where it stands now, not where it was first drawn', () => {
    const parts = makeParts();
    const plan = demoPlan();
    const at = (slide: number) => {
      parts.draw(evaluated({ ...plan, seats: [{ id: 'front-left', slide }] }));
      // From behind, through the middle of the backrest.
      const ray = { origin: [3000, -370, 550], direction: [-1, 0, 0] } as const;
      const hit = parts.obstacles.under(ray, ({ id }) => id === 'seat-front-left');
      if (!hit) throw new Error('the seat is not where it should be');
      return hit.point[0];
    };
    const first = at(0);
    expect(Math.abs(at(-35) - (first - 35))).toBeLessThan(1e-3);
    expect(Math.abs(at(0) - first)).toBeLessThan(1e-3);
    parts.end();
  });

  it('marks where a blocked line first meets what blocks it, on the line itself', () => {
    const parts = makeParts();
    const plan = demoPlan();
    const first = plan.options[0];
    if (!first) throw new Error('the demo has no option');
    const knee: Plan = {
      ...plan,
      obstacles: [{ id: 'crate', shape: 'box', center: [350, 0, 800], size: [60, 900, 700] }],
    };
    parts.draw(evaluated(knee));
    const crossed = parts.lines.shown().filter(({ cross }) => cross);
    expect(crossed.length).toBeGreaterThan(0);
    for (const { cross, arrival } of crossed) {
      expect(arrival.line).toBe('blocked');
      const [from, to] = [arrival.way[0], arrival.way[arrival.way.length - 1]];
      if (!from || !to) throw new Error('a way has no ends');
      if (!cross) continue;
      const along = (a: readonly number[], b: readonly number[]) =>
        Math.hypot(...a.map((x, k) => x - (b[k] as number)));
      expect(along(from, cross) + along(cross, to) - along(from, to)).toBeLessThan(0.01);
    }
    for (const { arrival, cross } of parts.lines.shown()) {
      if (arrival.line === 'clear') expect(cross).toBeNull();
    }
    parts.end();
  });
});
