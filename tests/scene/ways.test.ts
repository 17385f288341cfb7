import { describe, expect, it } from 'vitest';
import { type Arrival, distance, evaluatePlan, type Vec3 } from '../../src/geometry';
import { demoPlan } from '../../src/plan/demo';
import { geometriesAlive } from '../../src/scene/parts/bin';
import { createKit } from '../../src/scene/parts/kit';
import { createReflectionsPart } from '../../src/scene/parts/reflections-part';
import { strokeSheet } from '../../src/scene/parts/stroke-sheet';
import { bendsOf, wayStrokes } from '../../src/scene/parts/way-strokes';
import { createLook } from '../../src/scene/shading/look';

const FROM: Vec3 = [0, 0, 0];
const HEAD: Vec3 = [1000, 0, 0];
const plain = { mine: false, quiet: false };
const arrivals = (): Arrival[] => {
  const answer = evaluatePlan(demoPlan());
  if (!answer.ok) throw new Error(answer.error.message);
  return answer.options.flatMap(({ seats }) => seats.flatMap((seat) => seat.arrivals));
};

describe('a line on the drawing', () => {
  it('is whole where it is free', () => {
    const [line, ...more] = wayStrokes(
      FROM,
      HEAD,
      { line: 'clear', way: [FROM, HEAD] },
      null,
      plain,
    );
    expect(more).toEqual([]);
    expect(line).toMatchObject({ start: FROM, end: HEAD, tone: 'free' });
    expect(line?.dash ?? 0).toBe(0);
  });

  it('of a near miss differs by its dashes, not by colour alone, and shows the gap', () => {
    const pass = { onLine: [500, 0, 0], onBody: [500, 0, 30] } as const;
    const [line, gap] = wayStrokes(FROM, HEAD, { line: 'grazing', way: [FROM, HEAD] }, pass, plain);
    expect(line?.dotted).toBe(true);
    expect(line?.dash).toBeGreaterThan(0);
    expect(gap).toMatchObject({ start: pass.onLine, end: pass.onBody });
  });

  it('that is blocked goes whole round what blocks it, and dashed and faint through it', () => {
    const way: Vec3[] = [FROM, [300, 0, 50], [600, 0, 50], HEAD];
    const [straight, ...bent] = wayStrokes(FROM, HEAD, { line: 'blocked', way }, null, plain);
    expect(straight).toMatchObject({ start: FROM, end: HEAD, tone: 'blocked' });
    expect(straight?.dash).toBeGreaterThan(0);
    expect(straight?.strength).toBeLessThan(0.7);
    expect(bent.map(({ start, end }) => [start, end])).toEqual([
      [way[0], way[1]],
      [way[1], way[2]],
      [way[2], way[3]],
    ]);
    for (const { dash = 0, strength } of bent) {
      expect(dash).toBe(0);
      expect(strength).toBe(1);
    }
  });

  it('without a way round is dashed at full strength', () => {
    const strokes = wayStrokes(FROM, HEAD, { line: 'blocked', way: [FROM, HEAD] }, null, plain);
    expect(strokes).toHaveLength(1);
    expect(strokes[0]?.strength).toBe(1);
  });

  it('bends once round a rim, however many points the way has there', () => {
    const rim = [0, 10, 20, 30].map((z): Vec3 => [400 + z, 0, 100 + z]);
    const way = [FROM, ...rim, [800, 0, 100] as Vec3, HEAD];
    const bends = bendsOf(way);
    expect(bends).toHaveLength(2);
    expect(distance(bends[0] as Vec3, [415, 0, 115])).toBeLessThan(1e-9);
    expect(bends[1]).toEqual([800, 0, 100]);
    expect(bendsOf([FROM, HEAD])).toEqual([]);
  });

  it('has a bend wherever the engine goes round something, and ends at speaker and head', () => {
    const blocked = arrivals().filter(({ way }) => way.length > 2);
    expect(blocked.length).toBeGreaterThan(3);
    for (const { way } of blocked) expect(bendsOf(way).length).toBeGreaterThan(0);
  });
});

describe('strokes beyond the room there was', () => {
  it('are all drawn, and leave one geometry', () => {
    const before = geometriesAlive();
    const kit = createKit(createLook());
    const sheet = strokeSheet([[kit.path, 0]]);
    const strokes = Array.from({ length: 700 }, (_, i) => ({
      start: [i, 0, 0] as Vec3,
      end: [i, 1, 0] as Vec3,
      tone: 'ink' as const,
      width: 1,
    }));
    sheet.draw(strokes);
    const geometry = sheet.meshes[0]?.geometry;
    expect(geometry?.getAttribute('start').getX(699)).toBe(699);
    expect(geometriesAlive()).toBe(before + 1);
    sheet.draw(strokes.slice(0, 3));
    expect(sheet.meshes[0]?.geometry).toBe(geometry);
    sheet.dispose();
    kit.dispose();
    expect(geometriesAlive()).toBe(before);
  });
});

describe('reflections on the drawing', () => {
  const answer = evaluatePlan(demoPlan());
  if (!answer.ok) throw new Error(answer.error.message);
  const [option] = answer.options;
  const [seat] = option?.seats ?? [];
  const all = seat?.arrivals ?? [];
  const placed = new Map(option?.placed.map((one) => [one.speaker, one]) ?? []);

  it('are ranked by level, the strongest and the earliest brought out', () => {
    const kit = createKit(createLook());
    const part = createReflectionsPart(kit);
    part.show(seat?.head ?? HEAD, all, placed, true);
    for (const { speaker, reflections } of all) {
      const shown = part.shown().filter((one) => one.speaker === speaker);
      expect(shown).toHaveLength(reflections.length);
      const levels = [...shown]
        .sort((a, b) => a.rank - b.rank)
        .map(({ reflection }) => reflection.levelDb ?? -1e9);
      expect(levels).toEqual([...levels].sort((a, b) => b - a));
      const least = Math.min(...reflections.map(({ extra }) => extra));
      for (const { first, rank, reflection } of shown)
        expect(first).toBe(rank === 0 || reflection.extra === least);
    }
    part.dispose();
    kit.dispose();
  });

  it('run from the speaker over the panel to the head, but not into the listener’s own eyes', () => {
    const kit = createKit(createLook());
    const part = createReflectionsPart(kit);
    const count = all.reduce((sum, { reflections }) => sum + reflections.length, 0);
    const legs = () =>
      (part.group.children[0] as unknown as { geometry: { instanceCount: number } }).geometry
        .instanceCount;
    part.show(seat?.head ?? HEAD, all, placed, true);
    expect(legs()).toBe(2 * count);
    part.show(seat?.head ?? HEAD, all, placed, false);
    expect(legs()).toBe(count);
    part.dispose();
    kit.dispose();
  });
});
