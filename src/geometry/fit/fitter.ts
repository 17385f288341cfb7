/** Does a speaker fit at its spot: made ready once for a cabin, then cheap for each spot. */
import type { CabinModel, Panel } from '../cabin/model';
import type { OptionInput, PlanInput, SealedPocket, SpeakerInput } from '../input';
import { panelTree } from '../paths/cast';
import type { PlacedSpeaker } from '../result';
import { dot, type Vec3 } from '../vector';
import { areApart, type Body, bodyOf, type StandingSpeaker } from './body';
import { intoPanel, intoSpeaker, thingProblem } from './collision-words';
import { meets, meetsTriangles } from './meets';
import { overlap } from './overlap';
import { isOwnSeat } from './own-seat';
import { groundAt } from './panel-ground';
import { panelProblems } from './panel-problems';
import { pocketProblem } from './pocket-problem';
import type { FitProblem } from './problem';
import { meetsRingOf, ringProblems } from './ring-problems';
import { edgesIn } from './seams';
import { besideSpeaker } from './speaker-solid';
import { boundsOfThings, type Thing, thingsOf } from './things';

/** What is asked of each spot. `beside`: speakers that move along, such as the twin. */
export interface Fitter {
  /** Everything that keeps the speaker from fitting there; empty: it fits. */
  (speaker: SpeakerInput, placed: PlacedSpeaker, beside?: readonly StandingSpeaker[]): FitProblem[];
  /** Only whether it fits: stops at the first thing that keeps it from it. */
  fits(speaker: SpeakerInput, placed: PlacedSpeaker, beside?: readonly StandingSpeaker[]): boolean;
  /** Only whether its own body reaches into a keep-clear zone. */
  isKeptClear(speaker: SpeakerInput, placed: PlacedSpeaker): boolean;
}

/** Panels next door are met only this far before the own panel's plane, mm: it may be curved. */
const BEFORE_PANEL = 3;

interface Ready {
  panels: ReadonlyMap<string, Panel>;
  things: readonly Thing[];
  bounds: Float64Array;
}

const made = new WeakMap<CabinModel, Ready>();

function readyFor(cabin: CabinModel): Ready {
  let ready = made.get(cabin);
  if (!ready) {
    const things = thingsOf(cabin);
    const panels = new Map(cabin.panels.map((panel) => [panel.id, panel]));
    ready = { panels, things, bounds: boundsOfThings(things) };
    made.set(cabin, ready);
  }
  return ready;
}

function apart(body: Body, bounds: ArrayLike<number>, i: number): boolean {
  const { low, high } = body;
  return (
    (bounds[i] as number) > high[0] ||
    (bounds[i + 3] as number) < low[0] ||
    (bounds[i + 1] as number) > high[1] ||
    (bounds[i + 4] as number) < low[1] ||
    (bounds[i + 2] as number) > high[2] ||
    (bounds[i + 5] as number) < low[2]
  );
}

/**
 * Makes the question ready for a cabin and the speakers already placed in it. Asking about one of
 * those leaves it out of its own way. What was measured behind panels is in the cabin already.
 * @param option with the pockets drawn in it: a speaker in one has the pocket's airspace, not the
 * panel's, as long as it stands on the pocket's panel
 */
export function createFitter(
  cabin: CabinModel,
  others: readonly StandingSpeaker[] = [],
  option: Pick<OptionInput, 'speakers' | 'pockets'> | null = null,
): Fitter {
  const ready = readyFor(cabin);
  const room = { cabin, panels: ready.panels, things: ready.things };
  const standing = others.map((other) => ({ other, body: bodyOf(other) }));
  /** What is wrong with a pocket is so wherever on its panel a speaker is tried. */
  const pockets = new Map<SealedPocket, FitProblem | null>();

  function pocketWrong(pocket: SealedPocket, panel: Panel): FitProblem | null {
    let wrong = pockets.get(pocket);
    if (wrong === undefined) {
      wrong = option && pocketProblem({ panel, option, pocket });
      pockets.set(pocket, wrong);
    }
    return wrong;
  }

  function examine(
    { speaker, placed }: StandingSpeaker,
    beside: readonly StandingSpeaker[],
    report: (make: () => FitProblem) => boolean,
  ): boolean {
    const body = bodyOf({ speaker, placed });
    const { mount } = speaker;
    if (mount && onPanel(speaker, body, mount, report)) return true;
    if (thingMet(body, mount?.panel, null, report)) return true;
    for (const { other, body: their } of standing)
      if (other.speaker.id !== speaker.id && besideProblem(body, other, their, report)) return true;
    for (const other of beside)
      if (other.speaker.id !== speaker.id && besideProblem(body, other, bodyOf(other), report))
        return true;
    // Few stand on a ring, and those that do have it looked at last.
    if (!speaker.ring) return false;
    return ringProblems({ speaker, placed }, [...others, ...beside], room, report);
  }

  /** @param only things of this kind; `null`: all */
  function thingMet(
    body: Body,
    panel: string | undefined,
    only: Thing['kind'] | null,
    report: (make: () => FitProblem) => boolean,
  ): boolean {
    for (let i = 0; i < ready.things.length; i++) {
      if (apart(body, ready.bounds, 6 * i)) continue;
      const thing = ready.things[i] as Thing;
      if ((only && thing.kind !== only) || isOwnSeat(thing, panel)) continue;
      const solid = thing.solid();
      if (solid && meets(solid, body) && report(() => thingProblem(thing, overlap(solid, body))))
        return true;
    }
    return false;
  }

  function onPanel(
    { id: speakerId }: SpeakerInput,
    body: Body,
    { panel: id, u, v, standoff = 0 }: NonNullable<SpeakerInput['mount']>,
    report: (make: () => FitProblem) => boolean,
  ): boolean {
    const panel = ready.panels.get(id);
    if (!panel) {
      const sentence = `there is no panel "${id}" in this cabin`;
      return report(() => ({ kind: 'no-panel', sentence, by: null, with: id, hard: false }));
    }
    const ground = groundAt(panel, u, v);
    const pocket = option?.pockets?.find(
      ({ panel: on, speakers }) => on === id && speakers.includes(speakerId),
    );
    const open = pocket ? { ...panel, airspaceBehind: null } : panel;
    if (panelProblems(open, ground, standoff, body, edgesIn(cabin.panels), report)) return true;
    const wrong = pocket && pocketWrong(pocket, panel);
    if (wrong && report(() => wrong)) return true;
    return body.flange > 0 && neighbourMet(body, panel, ground.point, ground.normal, report);
  }

  /** Whether what stands before its panel runs into another panel, as a pod under the windscreen. */
  function neighbourMet(
    body: Body,
    own: Panel,
    point: Vec3,
    normal: Vec3,
    report: (make: () => FitProblem) => boolean,
  ): boolean {
    const straight = dot(body.axis, normal);
    const slant = Math.sqrt(Math.max(0, 1 - straight * straight));
    const height = dot(normal, [
      body.at[0] - point[0],
      body.at[1] - point[1],
      body.at[2] - point[2],
    ]);
    const wide = Math.max(body.flange, body.cutout);
    if (height + wide * slant <= BEFORE_PANEL) return false;
    const known = panelTree(cabin.panels);
    if (!known) return false;
    const above = { point, normal, height: BEFORE_PANEL };
    const panelOf = (triangle: number) => cabin.panels[known.ownerOf[triangle] as number] as Panel;
    const done = new Set([own]);
    for (;;) {
      const met = meetsTriangles(known, body, above, (triangle) => !done.has(panelOf(triangle)));
      if (met === null) return false;
      const panel = panelOf(met);
      done.add(panel);
      const overlapped = () =>
        overlap(known, body, above, (triangle) => panelOf(triangle) === panel);
      if (report(() => intoPanel(panel, overlapped()))) return true;
    }
  }

  const ask = (
    speaker: SpeakerInput,
    placed: PlacedSpeaker,
    beside: readonly StandingSpeaker[] = [],
  ): FitProblem[] => {
    const problems: FitProblem[] = [];
    examine({ speaker, placed }, beside, (make) => {
      problems.push(make());
      return false;
    });
    return problems;
  };
  const fits: Fitter['fits'] = (speaker, placed, beside = []) =>
    !examine({ speaker, placed }, beside, () => true);
  const isKeptClear: Fitter['isKeptClear'] = (speaker, placed) =>
    thingMet(bodyOf({ speaker, placed }), speaker.mount?.panel, 'zone', () => true) ||
    ringProblems({ speaker, placed }, [], room, (make) => make().hard);
  return Object.assign(ask, { fits, isKeptClear });
}

function besideProblem(
  body: Body,
  other: StandingSpeaker,
  their: Body,
  report: (make: () => FitProblem) => boolean,
): boolean {
  if (other.speaker.ring && meetsRingOf(body, other, report)) return true;
  if (their.flange === 0 || areApart(body, their)) return false;
  const { solid, body: seen } = besideSpeaker(their, body);
  if (!solid || !meets(solid, seen)) return false;
  return report(() => intoSpeaker(other, overlap(solid, seen)));
}

/** One option of a plan, in its cabin, with its speakers where they came to stand. */
export interface FitSubject {
  /** Not looked at: what it says of the car is in the cabin. */
  plan?: PlanInput;
  cabin: CabinModel;
  option: OptionInput;
  placed: readonly PlacedSpeaker[];
}

/**
 * What keeps one speaker of an option from fitting at its spot; empty: it fits, or there is no such
 * speaker. Bodies are cylinders (see body.ts); panels, obstacles and zones are those of the model,
 * not a survey of the car.
 */
export function fitOf({ cabin, option, placed }: FitSubject, speakerId: string): FitProblem[] {
  const standing = option.speakers.flatMap((speaker): StandingSpeaker[] => {
    const place = placed.find((p) => p.speaker === speaker.id);
    return place ? [{ speaker, placed: place }] : [];
  });
  const asked = standing.find(({ speaker }) => speaker.id === speakerId);
  return asked ? createFitter(cabin, standing, option)(asked.speaker, asked.placed) : [];
}
