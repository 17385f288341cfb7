import { describe, expect, test } from 'vitest';
import {
  closedBox,
  closedBoxLevelDb,
  FLAT_Q,
  litresForQ,
  type OptionInput,
  POCKET_FREQUENCIES_HZ,
  planPocket,
  pocketsOf,
  type SealedPocket,
} from '../../../src/geometry';
import { board, cabinOf, mid, planOf } from '../fit/boards';

const UNIT = { resonanceHz: 60, q: 0.42, vasLitres: 13 };
const BODY = { flange: 160, cutout: 140, depth: 60 };
const cabin = cabinOf(planOf({ panels: [board(600, 600, 'one'), board(600, 600, 'two')] }, []));

const speaker = (side: 'left' | 'right', more = {}) =>
  mid(BODY, {
    id: `mid-${side}`,
    side,
    pair: 'mid',
    mount: { panel: side === 'left' ? 'one' : 'two', u: 0.5, v: 0.5 },
    smallSignal: UNIT,
    ...more,
  });
const pocket = (side: 'left' | 'right', more: Partial<SealedPocket> = {}): SealedPocket => ({
  id: side,
  panel: side === 'left' ? 'one' : 'two',
  outline: [
    [0.25, 0.25],
    [0.75, 0.25],
    [0.75, 0.75],
    [0.25, 0.75],
  ],
  depth: side === 'left' ? 120 : 100,
  wall: 6,
  speakers: [`mid-${side}`],
  ...more,
});
const option = (more: Partial<OptionInput> = {}): OptionInput => ({
  id: 'a',
  speakers: [speaker('left'), speaker('right')],
  pockets: [pocket('left'), pocket('right')],
  ...more,
});
const study = (more: Partial<OptionInput> = {}) => pocketsOf({ cabin, option: option(more) });

describe('the pockets of an option', () => {
  test('each has its volume, and its box by the engine’s own formulas', () => {
    const { pockets } = study();
    for (const [i, one] of pockets.entries()) {
      const given = option().pockets?.[i] as SealedPocket;
      const volume = planPocket({ cabin, option: option() }, given);
      if (!volume.ok) throw new Error(volume.message);
      const box = closedBox(UNIT, volume.pocket.netLitres);
      expect(one).toMatchObject({
        pocket: given.id,
        side: given.id,
        netLitres: volume.pocket.netLitres,
        box: box.ok && box.box,
        flatLitres: litresForQ(UNIT, FLAT_Q),
        reasons: [],
        misfits: [],
      });
      const { outsideLitres, wallLitres, speakerLitres, netLitres } = one;
      expect(
        Math.abs(
          (outsideLitres ?? 0) - (wallLitres ?? 0) - (speakerLitres ?? 0) - (netLitres ?? 0),
        ),
      ).toBeLessThan(1e-9);
    }
  });

  test('left and right are compared from 20 to 500 Hz, finer than third-octaves', () => {
    expect(POCKET_FREQUENCIES_HZ[0]).toBe(20);
    expect(POCKET_FREQUENCIES_HZ.at(-1)).toBe(500);
    for (const [i, hz] of POCKET_FREQUENCIES_HZ.entries()) {
      const next = POCKET_FREQUENCIES_HZ[i + 1];
      if (next) expect(next / hz).toBeLessThanOrEqual(2 ** (1 / 12) + 1e-9);
      if (next) expect(next).toBeGreaterThan(hz);
    }
    const [pair] = study().pairs;
    const compared = pair?.compared;
    if (!compared) throw new Error(pair?.reasons.join());
    for (const { frequencyHz, leftDb, rightDb, differenceDb } of compared.levels) {
      expect(leftDb).toBe(closedBoxLevelDb(compared.left, frequencyHz));
      expect(rightDb).toBe(closedBoxLevelDb(compared.right, frequencyHz));
      expect(differenceDb).toBe(leftDb - rightDb);
    }
    const all = compared.levels.map(({ differenceDb }) => Math.abs(differenceDb));
    expect(Math.abs(compared.worst?.differenceDb ?? 0)).toBe(Math.max(...all));
  });

  test('the worst difference is looked for where the speakers play', () => {
    const bandHz = [80, 300] as const;
    const { pairs } = study({
      speakers: [speaker('left', { bandHz }), speaker('right', { bandHz })],
    });
    const worst = pairs[0]?.compared?.worst;
    expect(worst?.frequencyHz).toBeGreaterThanOrEqual(80);
    expect(worst?.frequencyHz).toBeLessThanOrEqual(300);
  });

  test('changing sides changes the sign and nothing else', () => {
    const swapped = study({
      pockets: [pocket('left', { depth: 100 }), pocket('right', { depth: 120 })],
    });
    const [a, b] = [study().pairs[0]?.compared, swapped.pairs[0]?.compared];
    expect(a?.worst?.differenceDb).toBeCloseTo(-(b?.worst?.differenceDb ?? 0), 12);
    expect(a?.left.resonanceHz).toBeCloseTo(b?.right.resonanceHz ?? 0, 9);
  });

  test('one that lies in a keep-clear zone or an obstacle says in which', () => {
    const car = cabinOf(
      planOf(
        {
          panels: [board(600, 600, 'one')],
          obstacles: [
            { id: 'brace', shape: 'capsule', from: [-60, -300, 0], to: [-60, 300, 0], radius: 20 },
            { id: 'far', shape: 'capsule', from: [-60, -300, 160], to: [-60, 300, 160], radius: 5 },
          ],
          keepClear: [
            { id: 'loom', reason: 'loom', shape: 'box', center: [-80, 0, 0], size: [40, 40, 900] },
          ],
        },
        [],
      ),
    );
    const one = pocket('left');
    const found = pocketsOf({ cabin: car, option: option({ pockets: [one] }) }).pockets[0]?.misfits;
    expect(found).toHaveLength(2);
    expect(found?.join()).toMatch(/part of it lies in .*brace/);
    expect(found?.join()).toMatch(
      /part of it lies in the place kept clear for .*loom.*: not there/,
    );
    const before = pocketsOf({
      cabin: car,
      option: option({ pockets: [pocket('left', { lies: 'before' })] }),
    });
    expect(before.pockets[0]?.misfits).toEqual([]);
  });

  test('two speakers alike in one pocket are one of twice the Vas', () => {
    const { pockets } = study({
      pockets: [pocket('left', { speakers: ['mid-left', 'mid-right'] })],
    });
    const [one] = pockets;
    expect(one?.unit).toEqual({ ...UNIT, vasLitres: 26 });
    expect(one?.box?.resonanceHz).toBeCloseTo(60 * Math.sqrt(1 + 26 / (one?.netLitres ?? 0)), 9);
  });
});

describe('why something is not known', () => {
  const reasonsOf = (more: Partial<OptionInput>) => study(more).pockets[0]?.reasons;

  test('no speaker, no small signals, unlike speakers, no panel, no room', () => {
    expect(reasonsOf({ pockets: [pocket('left', { speakers: [] })] })).toEqual([
      'no speaker is in it',
    ]);
    expect(reasonsOf({ speakers: [speaker('left', { smallSignal: undefined })] })).toEqual([
      'fs, Qts and Vas of "mid-left" are not known',
    ]);
    expect(
      reasonsOf({
        speakers: [speaker('left'), speaker('right', { smallSignal: { ...UNIT, q: 0.6 } })],
        pockets: [pocket('left', { speakers: ['mid-left', 'mid-right'] })],
      }),
    ).toEqual(['the speakers in it are not alike, and share no one resonance']);
    expect(reasonsOf({ pockets: [pocket('left', { panel: 'three' })] })).toEqual([
      'there is no panel "three" in this cabin',
    ]);
    expect(reasonsOf({ pockets: [pocket('left', { depth: 12 })] })).toEqual([
      'walls of 6 mm leave no room inside',
    ]);
  });

  test('a Qts above 0.707 has a box, but no volume for the flattest response', () => {
    const [one] = study({
      speakers: [speaker('left', { smallSignal: { ...UNIT, q: 0.9 } })],
      pockets: [pocket('left')],
    }).pockets;
    expect(one?.box).not.toBeNull();
    expect(one?.flatLitres).toBeNull();
    expect(one?.reasons).toHaveLength(1);
  });

  test('a pair with one pocket, or of unlike speakers, is not compared, and says why', () => {
    expect(study({ pockets: [pocket('left')] }).pairs[0]).toMatchObject({
      left: 'left',
      right: null,
      compared: null,
      reasons: ['there is no pocket for the right one'],
    });
    expect(
      study({ speakers: [speaker('left'), speaker('right', { smallSignal: { ...UNIT, q: 0.6 } })] })
        .pairs[0]?.reasons,
    ).toEqual(['left and right are not the same speaker: only alike ones are compared']);
    expect(study({ pockets: [] }).pairs).toEqual([]);
  });
});
