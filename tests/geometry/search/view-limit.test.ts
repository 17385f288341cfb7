import { describe, expect, test } from 'vitest';
import {
  buildCabin,
  type FoundSpot,
  type PillarView,
  type PlanInput,
  pillarViews,
  placeSpeaker,
  type SearchLimits,
  searchStage,
} from '../../../src/geometry';
import { carPlan, noFitter, onRings, searched, smallRequest, taken } from './stages';

const plan = carPlan('left', 'compact-hatch');

/** Pods on the pillar, and a dash top that is out of the view. */
const request = (require: SearchLimits, step = 110) =>
  smallRequest({
    panels: ['pillar-left', 'dash-top-left'],
    step,
    standoff: 45,
    aim: { kind: 'seat', seat: 'front-left' },
    require: { fits: false, ...require },
  });

const built = buildCabin(plan);
if (!built.ok) throw new Error(built.error.message);
const { cabin } = built;
const panels = new Map(cabin.panels.map((panel) => [panel.id, panel]));
const seats = new Map(cabin.seats.map((seat) => [seat.id, seat]));

/** What the view's own function says of a plan in this cabin. */
function viewsOf({ options: [option] }: PlanInput): PillarView[] {
  if (!option) throw new Error('no option');
  const placed = option.speakers.map((speaker) => {
    const place = placeSpeaker(speaker, panels, seats);
    if (!place.ok) throw new Error(place.error.message);
    return place.placed;
  });
  return pillarViews({ cabin, option, placed });
}

describe('a limit to what pods hide of the view', () => {
  test('refuses exactly the spots where the pillar’s view says so, by how much in words', () => {
    const limit = 4;
    const all = searched(plan, request({ maxPillarViewDeg: limit }), noFitter).all ?? [];
    let over = 0;
    for (const spot of all) {
      const views = viewsOf(taken(plan, 'midrange', spot));
      const hidden = views.filter(({ afterDeg }) => (afterDeg ?? 0) > limit);
      expect(spot.feasible, JSON.stringify(spot.why)).toBe(hidden.length === 0);
      expect(spot.why).toEqual(
        hidden.map(
          ({ side, afterDeg }) =>
            `${side}: hides ${((afterDeg ?? 0) - limit).toFixed(1)}° more of the view past the ${side} A-pillar than the 4° allowed`,
        ),
      );
      if (hidden.length > 0) over += 1;
    }
    expect(over).toBeGreaterThan(1);
    expect(over).toBeLessThan(all.filter(({ panel }) => panel === 'pillar-left').length);
  });

  test.each([
    ['pods', plan, {}],
    [
      'pods on rings',
      onRings(plan, 130),
      { aim: { kind: 'seat', seat: 'front-left', withinDeg: 25 } },
    ],
  ] as const)('on what %s add alone lets a car’s own thick pillar be', (_, of, aim) => {
    const limit = 2;
    const asked = { ...request({ maxAddedPillarViewDeg: limit }), ...aim };
    const all = searched(of, asked, noFitter).all ?? [];
    let over = 0;
    for (const spot of all) {
      const views = viewsOf(taken(of, 'midrange', spot));
      const adding = views.filter(({ addedDeg }) => (addedDeg ?? 0) > limit);
      expect(spot.feasible).toBe(adding.length === 0);
      over += adding.length > 0 ? 1 : 0;
    }
    expect(over).toBeGreaterThan(1);
  });

  test('of 0° leaves every spot that hides nothing more than is hidden already', () => {
    const all = searched(plan, request({ maxPillarViewDeg: 0 }), noFitter).all ?? [];
    const bare = viewsOf({ ...plan, options: [{ id: 'a', speakers: [] }] });
    expect(bare.every(({ afterDeg }) => (afterDeg ?? 0) > 0)).toBe(true);
    const elsewhere = all.filter(({ panel }) => panel !== 'pillar-left');
    expect(elsewhere.length).toBeGreaterThan(0);
    expect(elsewhere.every(({ feasible }) => feasible)).toBe(true);
  });

  test('made tighter never improves the best score', () => {
    // Only what hides something: else the best is found where nothing is hidden.
    const best = (require: SearchLimits) =>
      searched(
        plan,
        { ...request(require), panels: ['pillar-left'], all: false, answers: 0 },
        noFitter,
      ).front[0]?.score ?? Infinity;
    for (const name of ['maxPillarViewDeg', 'maxAddedPillarViewDeg'] as const) {
      let last = best({});
      const first = last;
      for (const limit of [6, 3, 0.5, 0]) {
        const next = best({ [name]: limit });
        expect(next).toBeGreaterThanOrEqual(last);
        last = next;
      }
      expect(last).toBeGreaterThan(first);
    }
  });

  test('holds for the pods of several pairs together, in answers and front', () => {
    const found = (most: number | null) => {
      const answer = searchStage(
        plan,
        {
          option: 'a',
          answers: 2,
          want: { pathSpread: 0.1 },
          pairs: ['midrange', 'tweeter'].map((pair, n) => ({
            pair,
            panels: ['pillar-left'],
            step: 110,
            standoff: 45,
            // Left of the driver and right: the one hides outward, the other inward.
            aim: { kind: 'direction', direction: [0.6, n === 0 ? 0.8 : -0.8, 0] } as const,
            require: { fits: false, ...(most !== null && { maxPillarViewDeg: most }) },
          })),
        },
        noFitter,
      );
      if (!answer.ok) throw new Error(answer.error.message);
      return answer.answer;
    };
    type Stage = { spots: readonly (FoundSpot & { pair: string })[] };
    const hidden = ({ spots }: Stage, without?: string) => {
      const put = spots.reduce<PlanInput>((so, spot) => taken(so, spot.pair, spot), plan);
      const options = put.options.map((option) => ({
        ...option,
        speakers: option.speakers.filter(({ pair }) => pair !== without),
      }));
      return Math.max(...viewsOf({ ...put, options }).map(({ afterDeg }) => afterDeg ?? Infinity));
    };
    const free = found(null);
    // A limit that each pair of some combination keeps alone, and the two together do not.
    const gaps = free.front.map((stage) => ({
      alone: Math.max(hidden(stage, 'midrange'), hidden(stage, 'tweeter')),
      both: hidden(stage),
    }));
    const widest = gaps.reduce((a, b) => (b.both - b.alone > a.both - a.alone ? b : a));
    expect(widest.both).toBeGreaterThan(widest.alone + 0.05);
    const limit = (widest.both + widest.alone) / 2;
    const bound = found(limit);
    expect(bound.front.length).toBeGreaterThan(0);
    for (const stage of [...bound.answers, ...bound.front])
      expect(hidden(stage)).toBeLessThanOrEqual(limit);
    expect(bound.frontOf).toMatchObject({ spacing: 0 });
    expect(bound.frontOf.combinations).toBeLessThan(bound.tried);
    expect(bound.front[0]?.score).toBeGreaterThanOrEqual(free.front[0]?.score ?? Infinity);
  });
});
