/** What keeps a speaker's mounting ring from being there: its own measures, panel, neighbours, zones. */
import type { CabinModel, Panel } from '../cabin/model';
import { panelTree } from '../paths/cast';
import { formOfSpeaker } from '../ring/speaker-ring';
import { cross, direction, type Vec3 } from '../vector';
import { type Body, bodyOf, type StandingSpeaker } from './body';
import { intoPanel, intoSpeaker, thingProblem } from './collision-words';
import { meets, meetsTriangles } from './meets';
import { flatOverhang } from './overhang';
import { overlap } from './overlap';
import { isOwnSeat } from './own-seat';
import { groundAt } from './panel-ground';
import { type FitProblem, millimetres, nameOf } from './problem';
import { type RingBody, ringBodyOf, ringMeets, ringOverlap, ringSolidOf } from './ring-body';
import { edgesIn, reachOver } from './seams';
import { speakerSolid } from './speaker-solid';
import type { Thing } from './things';

export interface RingRoom {
  cabin: Pick<CabinModel, 'panels'>;
  panels: ReadonlyMap<string, Panel>;
  things: readonly Thing[];
}

type Report = (make: () => FitProblem) => boolean;

/** Panels next door are met only this far before the own panel's plane, mm: it may be curved. */
const BEFORE_PANEL = 3;

/** Less than this is rounding, mm. */
const SLACK = 1e-6;

/**
 * Calls `report` with what keeps the ring from being there, until it answers true. Nothing for a
 * speaker without one, or of which body or aim are not known.
 * @returns whether it was stopped
 */
export function ringProblems(
  standing: StandingSpeaker,
  others: readonly StandingSpeaker[],
  room: RingRoom,
  report: Report,
): boolean {
  const { speaker, placed } = standing;
  if (speaker.ring && !speaker.mount)
    return report(() => ({
      kind: 'free-ring',
      sentence: 'no ring: a free point has no panel for it to stand on',
      by: null,
      hard: false,
    }));
  const asked = speaker.ring && formOfSpeaker(speaker, placed);
  if (!asked) return false;
  if (!asked.ok) {
    const { message, standoffNeeded } = asked;
    const by = standoffNeeded === null ? null : standoffNeeded - (speaker.mount?.standoff ?? 0);
    return report(() => ({ kind: 'ring', sentence: `no ring: ${message}`, by, hard: false }));
  }
  const ring = ringBodyOf(standing);
  if (!ring) return false;
  const its: Report = (make) =>
    report(() => {
      const problem = make();
      return { ...problem, sentence: `its ring ${problem.sentence}`, ofRing: true };
    });
  return (
    boreTooNarrow(standing, ring, report) ||
    flangeUnheld(standing, ring, report) ||
    overEdge(standing, ring, room, its) ||
    intoThings(standing, ring, room, its) ||
    intoPanels(standing, ring, room, its) ||
    others.some((other) => other.speaker.id !== speaker.id && intoOther(ring, other, its))
  );
}

function boreTooNarrow({ speaker }: StandingSpeaker, { input }: RingBody, report: Report) {
  const by = (speaker.body?.cutout ?? 0) - input.bore;
  return (
    by > SLACK &&
    report(() => ({
      kind: 'bore',
      sentence: `the bore of its ring is ${millimetres(by)} too narrow for it`,
      by,
      hard: false,
    }))
  );
}

/** The flange has to rest on the ring all round, and over its screws. */
function flangeUnheld({ speaker }: StandingSpeaker, { input }: RingBody, report: Report) {
  const flange = speaker.body?.flange ?? 0;
  const { outer, bore, seat, screws } = input;
  const tell = (sentence: string) =>
    report(() => ({ kind: 'flange', sentence, by: null, hard: false }));
  const its = `its flange of ${tenths(flange)} mm`;
  // Wider than that the screws stand outside it too: one reason is enough.
  if (bore >= flange - SLACK)
    return tell(`${its} falls through its ring, bored ${tenths(bore)} mm`);
  const isMissed = screws !== undefined && screws.circle >= flange - SLACK;
  return (
    (isMissed &&
      tell(`${its} is missed by the screws of its ring, on ${tenths(screws.circle)} mm`)) ||
    (seat.kind === 'proud' &&
      outer < flange - SLACK &&
      tell(`${its} is wider than its ring, ${tenths(outer)} mm outside`))
  );
}

const tenths = (mm: number): number => Math.round(mm * 10) / 10;

/** The ring's back, an ellipse on the panel, against the edge of what goes on as one surface. */
function overEdge({ speaker }: StandingSpeaker, ring: RingBody, room: RingRoom, its: Report) {
  const { mount } = speaker;
  const panel = mount && room.panels.get(mount.panel);
  if (!mount || !panel) return false;
  const ground = groundAt(panel, mount.u, mount.v);
  const { form, input, foot } = ring;
  const [long, short] = [form.sections.backOuter[0] / 2, input.outer / 2];
  const reach = long + form.sections.boreShift;
  if (ground.edge >= reach) return false;
  const { onto } = reachOver(panel, ground, reach, edgesIn(room.cabin.panels));
  const a = form.thickSide ?? anyAlong(ground.normal);
  const b = cross(ground.normal, a);
  const by = flatOverhang([panel, ...onto], ground, foot, a, b, long, short);
  return (
    by > SLACK &&
    its(() => ({
      kind: 'outline',
      sentence: `reaches ${millimetres(by)} over the edge of ${nameOf(panel)}`,
      by,
      with: panel.id,
      hard: false,
    }))
  );
}

function anyAlong(normal: Vec3): Vec3 {
  return direction(cross(normal, Math.abs(normal[2]) < 0.9 ? [0, 0, 1] : [1, 0, 0])) as Vec3;
}

function intoThings(
  { speaker }: StandingSpeaker,
  ring: RingBody,
  { things }: RingRoom,
  its: Report,
): boolean {
  const { low, high } = ring.body;
  return things.some((thing) => {
    if ([0, 1, 2].some((k) => below(thing.high, low, k) || below(high, thing.low, k))) return false;
    if (isOwnSeat(thing, speaker.mount?.panel)) return false;
    const solid = thing.solid();
    return (
      solid !== null &&
      ringMeets(solid, ring) &&
      its(() => thingProblem(thing, ringOverlap(solid, ring)))
    );
  });
}

const below = (a: Vec3, b: Vec3, k: number): boolean => (a[k] as number) < (b[k] as number);

/** Panels next door, as a pod under the windscreen meets it. */
function intoPanels(
  { speaker }: StandingSpeaker,
  ring: RingBody,
  { cabin }: RingRoom,
  its: Report,
): boolean {
  const known = panelTree(cabin.panels);
  if (!known) return false;
  const above = { ...ring.above, height: BEFORE_PANEL };
  const panelOf = (triangle: number) => cabin.panels[known.ownerOf[triangle] as number] as Panel;
  const done = new Set(cabin.panels.filter(({ id }) => id === speaker.mount?.panel));
  for (;;) {
    const met = meetsTriangles(known, ring.body, above, (t) => !done.has(panelOf(t)));
    if (met === null) return false;
    const panel = panelOf(met);
    done.add(panel);
    const deep = () => overlap(known, ring.body, above, (t) => panelOf(t) === panel);
    if (its(() => intoPanel(panel, deep()))) return true;
  }
}

/** Another speaker, and the ring that one stands on. */
function intoOther(ring: RingBody, other: StandingSpeaker, its: Report): boolean {
  const solid = speakerSolid(bodyOf(other));
  if (solid && ringMeets(solid, ring) && its(() => intoSpeaker(other, ringOverlap(solid, ring))))
    return true;
  const theirs = ringSolidOf(other, ring.body);
  return (
    theirs !== null &&
    ringMeets(theirs, ring) &&
    its(() => intoRing(other, ringOverlap(theirs, ring)))
  );
}

/** Whether a speaker's own body runs into the ring another one stands on. */
export function meetsRingOf(body: Body, other: StandingSpeaker, report: Report): boolean {
  const theirs = ringSolidOf(other, body);
  return (
    theirs !== null && meets(theirs, body) && report(() => intoRing(other, overlap(theirs, body)))
  );
}

function intoRing(other: StandingSpeaker, by: number | null): FitProblem {
  const { sentence, ...problem } = intoSpeaker(other, by);
  return { ...problem, sentence: sentence.replace(/ the (.*)$/, ' the ring of the $1') };
}
