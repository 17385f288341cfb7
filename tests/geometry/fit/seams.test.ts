import { describe, expect, it } from 'vitest';
import {
  type CabinModel,
  createFitter,
  type PanelInput,
  type SpeakerInput,
  TEMPLATES,
  type Vec3,
} from '../../../src/geometry';
import { edgesIn } from '../../../src/geometry/fit/seams';
import { cabinOf, mid, placedIn, planOf, problems } from './boards';

/** Next to the board of 600 by 600 about the origin, joined along Y = 300 and bent back there. */
function nextDoor(bendDeg: number, gap = 0, more: Partial<PanelInput> = {}): PanelInput {
  const [c, s] = [Math.cos((bendDeg * Math.PI) / 180), Math.sin((bendDeg * Math.PI) / 180)];
  const near = 300 + gap;
  const at = (across: number, z: number): Vec3 => [-across * s, near + across * c, z];
  return {
    id: 'next',
    corners: [at(0, -300), at(400, -300), at(400, 300), at(0, 300)],
    ...more,
  };
}
const board: PanelInput = {
  id: 'board',
  corners: [
    [0, -300, -300],
    [0, 300, -300],
    [0, 300, 300],
    [0, -300, 300],
  ],
};
/** A 100 mm flange 20 mm from the seam: 30 mm of it lie on the panel next door. */
const across: SpeakerInput = mid(
  { flange: 100, cutout: 30, depth: 20 },
  { mount: { panel: 'board', u: 580 / 600, v: 0.5 } },
);
const kinds = (next: PanelInput, speaker = across, measured = {}) =>
  problems({ panels: [board, next], measured }, speaker).map(({ kind, by, with: other }) => [
    kind,
    by === null ? null : Math.round(by * 10) / 10,
    other,
  ]);

describe('a flange across a seam', () => {
  it('lies on a panel that goes on level in the next one', () => {
    expect(kinds(nextDoor(0))).toEqual([]);
    expect(kinds(nextDoor(2.5))).toEqual([]);
  });

  it('reaches over the edge where the next one bends away, stands off, or may not be mounted on', () => {
    expect(kinds(nextDoor(10))).toContainEqual(['outline', 30, 'board']);
    expect(kinds(nextDoor(0, 2))).toContainEqual(['outline', 30, 'board']);
    expect(kinds(nextDoor(0, 0, { mountable: false }))).toContainEqual(['outline', 30, 'board']);
  });

  it('still ends at the far edge of the panel it goes on in', () => {
    const narrow = nextDoor(0);
    const strip: PanelInput = {
      ...narrow,
      corners: [
        [0, 300, -300],
        [0, 320, -300],
        [0, 320, 300],
        [0, 300, 300],
      ],
    };
    // 20 to the seam and 20 beyond it: 10 of its radius of 50 are over.
    expect(kinds(strip)).toEqual([['outline', 10, 'board']]);
    const third: PanelInput = {
      id: 'third',
      corners: [
        [0, 320, -300],
        [0, 600, -300],
        [0, 600, 300],
        [0, 320, 300],
      ],
    };
    expect(problems({ panels: [board, strip, third] }, across)).toEqual([]);
  });

  it('has only the smaller of both depths for an opening across it', () => {
    const wide = { ...across, body: { flange: 100, cutout: 80, depth: 40 } };
    expect(kinds(nextDoor(0), wide, { next: { depthBehind: 25 } })).toEqual([
      ['depth', 15, 'next'],
    ]);
    expect(kinds(nextDoor(0), across, { next: { depthBehind: 5 } })).toEqual([]);
  });
});

describe('in the cars', () => {
  const cars = TEMPLATES.map(({ id }): [string, CabinModel] => [
    id,
    cabinOf({ ...planOf({}, []), cabin: { template: id, wheelSide: 'left' } }),
  ]);

  it.each(cars)(
    '%s: the dash is one surface from left to right, and no door runs into its frame',
    (_, cabin) => {
      const next = (id: string) => {
        const panel = cabin.panels.find((one) => one.id === id);
        if (!panel) throw new Error(`no ${id}`);
        return edgesIn(cabin.panels)(panel)
          .seams.map(({ to }) => to.id)
          .sort();
      };
      expect(next('dash-top-center')).toEqual(['dash-top-left', 'dash-top-right']);
      expect(next('dash-top-left')).toEqual(['dash-top-center']);
      expect(next('dash-face-right')).toEqual(['dash-face-center']);
      for (const id of ['door-lower-left', 'door-upper-left', 'kick-left', 'pillar-right'])
        expect(next(id), id).toEqual([]);
    },
  );

  it.each(cars)('%s: a centre speaker may stand on the seam of the dash top', (_, cabin) => {
    const top = cabin.panels.find(({ id }) => id === 'dash-top-left');
    const speaker: SpeakerInput = {
      id: 'mid',
      role: 'midrange',
      mount: { panel: 'dash-top-left', u: 0, v: 0.5 },
      aim: { kind: 'normal' },
      body: { flange: 60, cutout: 50, depth: 20 },
    };
    const found = ([0.02, 0.98] as const).map((u) => {
      const there = { ...speaker, mount: { panel: 'dash-top-left', u, v: 0.5 } };
      const [placed] = placedIn(cabin, [there]);
      if (!placed) throw new Error('not placed');
      return createFitter(cabin)(there, placed).map(({ kind }) => kind);
    });
    expect(top).toBeDefined();
    // One end is the seam, the other one ends the dash.
    expect(found.filter((kinds) => kinds.includes('outline'))).toHaveLength(1);
  });
});
