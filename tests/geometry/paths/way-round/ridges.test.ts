import { describe, expect, test } from 'vitest';
import { buildCabin, type Panel, type PanelInput, type Vec3 } from '../../../../src/geometry';
import { buildCaster, type SpotStart } from '../../../../src/geometry/paths/cast';
import { buildWayFinder } from '../../../../src/geometry/paths/way-round';
import { ridgesOf } from '../../../../src/geometry/paths/way-round/ridges';

/** Boards that face the listener's head. */
function boards(inputs: readonly PanelInput[], head: Vec3 = [0, 0, 900]): readonly Panel[] {
  const answer = buildCabin({
    cabin: { template: 'none', wheelSide: 'left', panels: inputs },
    seats: [{ id: 'listener', head }],
  });
  if (!answer.ok) throw new Error(answer.error.message);
  return answer.cabin.panels;
}

function near(panels: readonly Panel[], a: Vec3, b: Vec3, spot: SpotStart | null = null) {
  const finder = buildWayFinder(panels, [], buildCaster(panels, []));
  return finder.nearMisses(a, b, null, spot, 300);
}

/** Across Y from −500 to 500, from one place in the X–Z plane to another. */
const strip = (id: string, x0: number, z0: number, x1: number, z1: number): PanelInput => ({
  id,
  corners: [
    [x0, -500, z0],
    [x1, -500, z1],
    [x1, 500, z1],
    [x0, 500, z0],
  ],
});

const kinds = (panels: readonly Panel[]) =>
  ridgesOf(panels).map(({ panels: of, tree }) => `${of.join('+')} ${tree.edges.length / 7}`);

describe('a panel stands out', () => {
  test('with every free edge', () => {
    expect(kinds(boards([strip('board', -200, 0, 200, 0)]))).toEqual(['board 4']);
  });

  test('where it meets another in a ridge towards the cabin, which is named after the first', () => {
    const roof = [strip('rise', -400, -200, 0, 0), strip('fall', 0, 0, 400, -200)];
    expect(kinds(boards(roof))).toEqual(['rise 3', 'rise+fall 1', 'fall 3']);
    const [miss] = near(boards(roof), [-300, 10, 20], [300, -10, 20]);
    expect(miss?.id).toBe('rise');
    expect(miss?.point.map((x) => Math.round(x) + 0)).toEqual([0, 0, 0]);
    expect(miss?.distance).toBeCloseTo(20, 9);
  });

  test('nowhere along a hollow corner, nor along a joint that lies flat', () => {
    expect(kinds(boards([strip('fall', -400, 200, 0, 0), strip('rise', 0, 0, 400, 200)]))).toEqual([
      'fall 3',
      'rise 3',
    ]);
    expect(kinds(boards([strip('one', -400, 0, 0, 0), strip('two', 0, 0, 400, 10)]))).toEqual([
      'one 3',
      'two 3',
    ]);
  });

  test('only with what is left of an edge that a shorter panel shares', () => {
    const short: PanelInput = {
      id: 'short',
      corners: [
        [0, -100, 0],
        [400, -100, -200],
        [400, 100, -200],
        [0, 100, 0],
      ],
    };
    const panels = boards([strip('rise', -400, -200, 0, 0), short]);
    const lengthOf = (ids: string) =>
      ridgesOf(panels)
        .filter(({ panels: of }) => of.join('+') === ids)
        .flatMap(({ tree }) => Array.from(tree.edges).filter((_, k) => k % 7 === 6));
    expect(lengthOf('rise+short').map(Math.round)).toEqual([200]);
    // Two sides, the far end, and 400 on either side of the short one.
    expect(
      lengthOf('rise')
        .map(Math.round)
        .sort((a, b) => a - b),
    ).toEqual([400, 400, 447, 447, 1000]);
  });

  test('not where it ends on another’s face', () => {
    const floor = strip('floor', -500, 0, 500, 0);
    const fin: PanelInput = {
      id: 'fin',
      corners: [
        [0, -300, 0],
        [0, 300, 0],
        [0, 300, 300],
        [0, -300, 300],
      ],
    };
    expect(kinds(boards([floor, fin]))).toEqual(['floor 4', 'fin 3']);
  });

  test('not at all when it has no area', () => {
    const line = strip('line', 0, 0, 0, 0);
    expect(kinds(boards([line]))).toEqual([]);
    expect(near(boards([line]), [-300, 0, 5], [300, 0, 5])).toEqual([]);
  });
});

describe('a line close to a panel', () => {
  test('grazes its edge, not its face', () => {
    const table = boards([strip('table', -2000, 0, 2000, 0)]);
    expect(near(table, [-300, 0, 3], [300, 0, 3])).toEqual([]);
    expect(near(table, [1700, 0, 3], [2300, 0, 3]).map(({ id }) => id)).toEqual(['table']);
  });

  test('from a speaker on it does not graze it: it is the baffle', () => {
    const roof = boards([strip('rise', -400, -200, 0, 0), strip('fall', 0, 0, 400, -200)]);
    const spot = (panel: string): SpotStart => ({ panel, standoff: 40, normal: [0, 0, 1] });
    const ids = (panel: string) =>
      near(roof, [-300, 10, 20], [300, -10, 20], spot(panel)).map(({ id }) => id);
    // The ridge is part of both; without a spot it counts.
    expect(ids('rise')).toEqual([]);
    expect(ids('fall')).toEqual([]);
    expect(ids('another')).toEqual(['rise']);
  });
});

describe('in a template’s cabin', () => {
  const templates = ['city-car', 'compact-hatch', 'estate', 'roadster', 'panel-van', 'pickup'];
  const cabinOf = (template: string, wheelSide: 'left' | 'right' = 'left') => {
    const answer = buildCabin({ cabin: { template, wheelSide } });
    if (!answer.ok) throw new Error(answer.error.message);
    return answer.cabin;
  };

  test.each(templates)(
    '%s: it is closed, so no panel but a seat’s front has a free edge',
    (name) => {
      const free = ridgesOf(cabinOf(name).panels)
        .filter(({ panels }) => panels.length === 1)
        .map(({ id }) => id.replace(/-(left|right|center)$/, ''));
      expect([...new Set(free)].sort()).toEqual(['dash-roll', 'seat-base']);
    },
  );

  test.each(templates)('%s: what stands out on the left does on the right', (name) => {
    const all = new Set(ridgesOf(cabinOf(name).panels).map(({ panels }) => panels.join(' ')));
    const swapped = (s: string) =>
      s.replace(/left|right/g, (side) => (side === 'left' ? 'right' : 'left'));
    for (const ids of all) expect([ids, all.has(swapped(ids))]).toEqual([ids, true]);
    expect(all.has('console-side-left console-top')).toBe(true);
  });

  test('a line close over the dash’s lip grazes the dash', () => {
    const { panels } = cabinOf('estate');
    // Over the lip's crown, from the windscreen's foot to a low seat.
    const roll = ridgesOf(panels).find(({ id }) => id === 'dash-roll-left');
    if (!roll) throw new Error('expected the left dash roll to stand out');
    const [x, , z] = roll.tree.edges as unknown as [number, number, number];
    const [miss] = near(panels, [x - 200, -400, z + 30], [x + 500, -400, z - 10]);
    expect(miss?.id).toBe('dash-roll-left');
    expect(miss?.detour).toBeLessThan(5);
  });
});
