import { describe, expect, test } from 'vitest';
import {
  compareOptions,
  createSpotReader,
  FITS,
  fitOf,
  type MapRequest,
  mapSpots,
  measureOptions,
  type PlanInput,
  type SealedPocket,
  searchSpots,
} from '../../../src/geometry';
import { stagesOf } from '../compare/boards';
import { carPlan, taken } from '../search/stages';

/** Half a litre is free behind it and its twin. */
const PANEL = 'kick-left';
const TWIN = 'kick-right';

/** A pocket over most of a panel, so deep, for these speakers. */
const pocket = (panel: string, depth: number, speakers: readonly string[]): SealedPocket => ({
  id: `pocket-${panel}`,
  panel,
  outline: [
    [0.05, 0.05],
    [0.95, 0.05],
    [0.95, 0.95],
    [0.05, 0.95],
  ],
  depth,
  lies: 'behind',
  wall: 6,
  speakers,
});

/** Mids that want a litre behind them, more than is free behind the kick panels without a pocket. */
function plan(pockets: readonly SealedPocket[]): PlanInput {
  const base = carPlan();
  const [option] = base.options;
  if (!option) throw new Error('the plan has an option');
  return {
    ...base,
    cabin: {
      ...base.cabin,
      measured: { [PANEL]: { airspaceBehind: 0.5 }, [TWIN]: { airspaceBehind: 0.5 } },
    },
    options: [
      {
        ...option,
        pockets,
        speakers: option.speakers.map((speaker) =>
          speaker.role === 'midrange' && speaker.body && speaker.mount
            ? {
                ...speaker,
                mount: { ...speaker.mount, standoff: 2 },
                body: { ...speaker.body, airspaceLitres: 1 },
              }
            : speaker,
        ),
      },
    ],
  };
}

const request: MapRequest = {
  option: 'a',
  speaker: 'midrange-left',
  quantities: ['offAxisDeg'],
  step: 30,
  panels: [PANEL, TWIN],
  seats: ['front-left'],
  fits: true,
};

/** How many spots of each panel the map says the mid fits at. */
function fitting(of: PlanInput): Record<string, number> {
  const answer = mapSpots(of, request);
  if (!answer.ok) throw new Error(answer.error.message);
  const { map } = answer;
  return Object.fromEntries(
    map.panels.map(({ panel, columns, rows, first }) => [
      panel,
      map.fit.slice(first, first + columns * rows).filter((fit) => fit === FITS).length,
    ]),
  );
}

const both = (depth: number): SealedPocket[] => [
  pocket(PANEL, depth, ['midrange-left']),
  pocket(TWIN, depth, ['midrange-right']),
];

describe('map, search and comparison on a panel with a pocket', () => {
  const bare = fitting(plan([]));

  test('go by the pocket’s airspace, not by what is free behind the panel', () => {
    expect(bare).toEqual({ [PANEL]: 0, [TWIN]: 0 });
    const roomy = fitting(plan(both(100)));
    expect(roomy[PANEL]).toBeGreaterThan(0);
    expect(roomy[TWIN]).toBeGreaterThan(0);
    // One too shallow for a litre besides the speaker is no better than none.
    expect(fitting(plan(both(20)))).toEqual(bare);
  });

  test('on either side by the pocket of the speaker that would stand there', () => {
    const [left, right] = both(100) as [SealedPocket, SealedPocket];
    const all = fitting(plan([left, right]));
    expect(fitting(plan([left]))).toEqual({ ...all, [TWIN]: 0 });
    expect(fitting(plan([right]))).toEqual({ ...all, [PANEL]: 0 });
    expect(fitting(plan([{ ...left, speakers: ['tweeter-left'] }, right]))[PANEL]).toBe(0);
  });

  test.each([[both(100)], [both(20)], [[]]])(
    'say of a spot what the fit of a speaker put there says (%#)',
    (pockets) => {
      const subject = plan(pockets);
      const answer = createSpotReader(subject, request);
      const found = searchSpots(subject, {
        option: 'a',
        pair: 'midrange',
        panels: [PANEL],
        step: 60,
        seats: [{ id: 'front-left', weight: 1 }],
        all: true,
      });
      if (!answer.ok || !found.ok) throw new Error('both can be asked');
      let asked = 0;
      for (const spot of found.answer.all ?? []) {
        const there = taken(subject, 'midrange', spot);
        const [stage] = stagesOf(there);
        const problems = stage && fitOf({ ...stage, placed: stage.result.placed }, 'midrange-left');
        const own = problems?.map(({ sentence }) => sentence);
        const { panel, u, v } = spot;
        expect(
          answer.reader.read({ panel, u, v })?.misfits.map(({ sentence }) => sentence),
        ).toEqual(own);
        asked += 1;
      }
      expect(asked).toBeGreaterThan(5);
    },
  );

  test('count in a comparison what the fit of every speaker says', () => {
    for (const pockets of [both(100), both(20), []]) {
      const stages = stagesOf(plan(pockets));
      const row = compareOptions(measureOptions(stages), 'a', null).find(
        ({ measure }) => measure.kind === 'misfits',
      );
      const [stage] = stages;
      if (!stage) throw new Error('the plan has an option');
      const said = stage.option.speakers.filter(
        ({ id }) => fitOf({ ...stage, placed: stage.result.placed }, id).length > 0,
      );
      expect(row?.cells[0]?.value.value).toBe(said.length);
    }
  });
});
