import { describe, expect, it } from 'vitest';
import { evaluatePlan, type FitProblem, fitOf, pillarViews } from '../../src/geometry';
import { demoPlan } from '../../src/plan/demo';
import { geometriesAlive } from '../../src/scene/parts/bin';
import { createKit } from '../../src/scene/parts/kit';
import { createPillarPart } from '../../src/scene/parts/pillar-part';
import { createZonesPart } from '../../src/scene/parts/zones-part';
import { pillarStrokes } from '../../src/scene/pillar/pillar-strokes';
import { runsInto } from '../../src/scene/runs-into';
import { createLook } from '../../src/scene/shading/look';

const plan = demoPlan();
const answer = evaluatePlan(plan);
if (!answer.ok) throw new Error(answer.error.message);
const { cabin } = answer;

/** The demo's mids, higher up their pillars. */
function viewsAt(v: number) {
  const [option] = plan.options;
  if (!option) throw new Error('no option');
  const speakers = option.speakers
    .filter(({ role }) => role === 'midrange')
    .map((speaker) => ({
      ...speaker,
      mount: { ...speaker.mount, panel: speaker.mount?.panel ?? '', u: 0.4, v },
    }));
  const moved = { ...plan, options: [{ ...option, speakers }] };
  const now = evaluatePlan(moved);
  if (!now.ok) throw new Error(now.error.message);
  return pillarViews({
    cabin: now.cabin,
    option: { ...option, speakers },
    placed: now.options[0]?.placed ?? [],
  });
}

describe('what the selected speaker runs into', () => {
  const one = (kind: FitProblem['kind'], id: string): FitProblem => ({
    kind,
    sentence: '',
    by: 3,
    with: id,
    hard: kind === 'zone',
  });

  it('is marked by what it is; its own panel’s outline and depth are nothing to run into', () => {
    const zone = cabin.keepClear[0]?.id ?? '';
    const hit = runsInto(
      [
        one('depth', 'pillar-left'),
        one('obstacle', 'dash-top-left'),
        one('speaker', 'tweeter-left'),
        one('zone', zone),
      ],
      cabin,
    );
    expect([...hit.bodies]).toEqual(['dash-top-left']);
    expect([...hit.speakers]).toEqual(['tweeter-left']);
    expect([...hit.zones]).toEqual([zone]);
    expect(hit.worst?.kind).toBe('zone');
  });

  it('agrees with the engine for mids low on the pillar, which reach into the dash', () => {
    const low = structuredClone(plan);
    for (const { role, mount } of low.options[0]?.speakers ?? [])
      if (role === 'midrange' && mount) Object.assign(mount, { v: 0.12, standoff: 30 });
    const evaluated = evaluatePlan(low);
    if (!evaluated.ok) throw new Error(evaluated.error.message);
    const [option, result] = [low.options[0], evaluated.options[0]];
    if (!option || !result) throw new Error('no option');
    const found = fitOf({ cabin, option, placed: result.placed }, 'midrange-left');
    expect([...runsInto(found, cabin).bodies]).toEqual(['dash-top-left']);
  });

  it('is a zone drawn even while zones are hidden, and no other', () => {
    const kit = createKit(createLook());
    const zones = createZonesPart(kit);
    const [first, second] = cabin.keepClear;
    if (!first || !second) throw new Error('no zones');
    zones.show(cabin.keepClear, false);
    expect(zones.group.visible).toBe(false);
    zones.show(cabin.keepClear, false, new Set([second.id]));
    expect(zones.group.visible).toBe(true);
    expect(zones.middles().map(({ zone }) => zone.id)).toEqual([second.id]);
    zones.show(cabin.keepClear, true, new Set([second.id]));
    expect(zones.middles()).toHaveLength(cabin.keepClear.length);
    zones.show(cabin.keepClear, false);
    expect(zones.middles()).toEqual([]);
    zones.dispose();
    kit.dispose();
  });
});

describe('the view past the pillars, drawn', () => {
  const [left] = viewsAt(0.55);
  if (!left?.lines) throw new Error('no lines');
  const { lines } = left;

  it('runs from both eyes past where the lines touch, and on behind the pillar', () => {
    const made = pillarStrokes(left, false);
    for (const [eye, touch] of [
      [lines.eyes.left, lines.outer],
      [lines.eyes.right, lines.inner],
    ] as const) {
      const sight = made?.strokes.find(({ start, tone }) => start === eye && tone === 'ink');
      if (!sight) throw new Error('no line of sight');
      const [a, b] = [0, 1].map((k) => (touch[k] as number) - (eye[k] as number)) as [
        number,
        number,
      ];
      const [c, d] = [0, 1].map((k) => (sight.end[k] as number) - (eye[k] as number)) as [
        number,
        number,
      ];
      expect(Math.abs(a * d - b * c) / Math.hypot(a, b)).toBeLessThan(1e-6);
      expect(Math.hypot(c, d)).toBeGreaterThan(Math.hypot(a, b) + 300);
    }
  });

  it('shows from the seat what the pod adds, on the pillar, and no line into the lens', () => {
    const own = pillarStrokes(left, true)?.strokes ?? [];
    expect(own.some(({ tone }) => tone === 'accent')).toBe(true);
    for (const { start, end } of own)
      for (const point of [start, end]) expect(Math.abs(point[2] - 875)).toBeLessThan(60);
    const bare = viewsAt(0.02)[0];
    if (!bare) throw new Error('no view');
    expect(bare.addedDeg).toBe(0);
    expect(pillarStrokes(bare, true)?.strokes.some(({ tone }) => tone === 'accent')).toBe(false);
  });

  it('leaves nothing behind after fifty changes', () => {
    const kit = createKit(createLook());
    const part = createPillarPart(kit);
    const before = geometriesAlive();
    const sets = [viewsAt(0.5), viewsAt(0.6)];
    for (let i = 0; i < 50; i++) part.show(sets[i % 2] ?? null, i % 3 === 0);
    expect(geometriesAlive() - before).toBeLessThanOrEqual(1);
    expect(part.shown()).toHaveLength(2);
    part.show(null, false);
    expect(part.group.visible).toBe(false);
    expect(part.shown()).toEqual([]);
    part.dispose();
    kit.dispose();
  });
});
