/**
 * What is drawn of one option over the car, which all options share: speakers, the ways of their
 * sound, reflections, the image, and what is marked as in the way.
 */
import { Group } from 'three';
import type {
  CabinModel,
  KeepClearZone,
  OptionInput,
  OptionResult,
  SeatResult,
  SpeakerInput,
  Vec3,
} from '../geometry';
import { planStore, sessionStore } from '../store';
import { problemsOf, viewsOf } from '../store/fit-of-board';
import { slowMotionStore } from '../store/slow-motion';
import {
  chosenId,
  type Hovered,
  type InTheWay,
  inTheWayOf,
  panelsOf,
  reflectingArrivals,
} from './attention';
import { createImageKeeper } from './image/keep-image';
import { wordsFor } from './label-wants';
import { createImagePart } from './parts/image-part';
import type { Kit } from './parts/kit';
import { createLinesPart, type Surroundings } from './parts/lines-part';
import { createPanelMarks } from './parts/panel-marks';
import type { PanelsPart } from './parts/panels-part';
import { createPillarPart } from './parts/pillar-part';
import { createPocketsPart } from './parts/pockets-part';
import { createReflectionsPart } from './parts/reflections-part';
import { createRingsPart } from './parts/rings-part';
import { createSpeakersPart } from './parts/speakers-part';
import { RUNS_INTO_NOTHING, type RunsInto, runsInto } from './runs-into';
import { createWavesLater } from './waves/waves-later';
import type { WordsFrame } from './words/want';

export interface OptionShown {
  cabin: CabinModel;
  option: OptionResult | null;
  /** The seat in view, as this option answers it. */
  seat: SeatResult | null;
  hovered: Hovered;
  /** Id of the seat from whose eyes the car is seen; then no line is drawn. */
  lookedThrough: string | null;
  /** A map is painted on the panels: lines and other hatching would only be lines among lines. */
  painted?: boolean;
}

const ORIGIN: Vec3 = [0, 0, 0];
const NOTHING: InTheWay = { blocking: new Set(), grazed: new Set() };

/** @param ask called when something worked out meanwhile is to be drawn */
export function createOptionDrawing(
  kit: Kit,
  panels: PanelsPart,
  around: Surroundings,
  ask: () => void,
) {
  const group = new Group();
  const parts = {
    marks: createPanelMarks(kit),
    pockets: createPocketsPart(kit),
    rings: createRingsPart(kit),
    speakers: createSpeakersPart(kit),
    lines: createLinesPart(kit),
    reflections: createReflectionsPart(kit),
    image: createImagePart(kit),
    pillar: createPillarPart(kit),
    waves: createWavesLater(kit, ask),
  };
  const { marks, pockets, rings, speakers, lines, reflections, image, pillar, waves } = parts;
  for (const part of Object.values(parts)) group.add(part.group);
  const images = createImageKeeper(ask);
  let inTheWay = NOTHING;
  let hits = RUNS_INTO_NOTHING;
  let overPaint = false;

  /** From the side and from the front the fan would be a line on edge. */
  function showImage({ cabin, option, seat }: OptionShown): void {
    const { view, showImage: wanted } = sessionStore.getState();
    const level =
      view === 'seat' ? 'own eyes' : view === 'free' || view === 'plan' ? 'above' : null;
    const plan = planStore.shown();
    const input = inputOf(option);
    if (!wanted || !level || !option || !input || !seat) {
      image.show(null, null, null);
      return;
    }
    const stage = { plan, cabin, option: input, result: option };
    const kept = images.of(stage, seat.id, planStore.getState().gesture === null);
    image.show(kept, cabin.seats.find(({ id }) => id === seat.id) ?? null, level);
  }

  /** The sound on its way; not while something is moved, since then it starts elsewhere. */
  function showWaves({ cabin, option, seat }: OptionShown): void {
    const { open, delays } = slowMotionStore.getState();
    const input = inputOf(option);
    const still = planStore.getState().gesture === null;
    const at = cabin.seats.find(({ id }) => id === seat?.id) ?? null;
    const looked = open && still && option && input && at;
    const stage = looked && { plan: planStore.shown(), cabin, option: input, result: option };
    waves.show(stage || null, at, delays);
  }

  /** What the selected speaker runs into, and what the pillars hide; worked out once an answer. */
  function lookAtFit({ cabin, option: result, lookedThrough }: OptionShown, chosen: string | null) {
    const { showPillarView } = sessionStore.getState();
    const option = inputOf(result);
    const board = result && option ? { cabin, option, result } : null;
    hits = board && chosen ? runsInto(problemsOf(board, chosen), cabin) : RUNS_INTO_NOTHING;
    pillar.show(board && showPillarView ? viewsOf(board) : null, lookedThrough !== null);
  }

  return {
    group,
    speakers,
    show(shown: OptionShown): void {
      const { cabin, option, seat, hovered, lookedThrough, painted = false } = shown;
      overPaint = painted;
      const { selection, showReflections, showPockets } = sessionStore.getState();
      const chosen = chosenId('speaker', selection);
      const over = hovered?.kind === 'speaker' ? hovered.id : null;
      const placed = new Map(option?.placed.map((one) => [one.speaker, one]) ?? []);
      const arrivals = seat?.arrivals ?? [];
      const among = speakersOf(option);
      lookAtFit(shown, chosen);
      inTheWay = withBodies(inTheWayOf(arrivals, hovered), hits);
      const reflecting = showReflections ? reflectingArrivals(seat, among, hovered) : [];
      marks.mark(panels.drawn(), {
        ...(painted ? NOTHING : inTheWay),
        selected: painted ? null : chosenId('panel', selection),
        reflecting: panelsOf(reflecting),
      });
      pockets.show(cabin, inputOf(option), showPockets);
      const standing = among.flatMap((speaker) => {
        const at = placed.get(speaker.id);
        return at ? [{ speaker, placed: at }] : [];
      });
      rings.show(standing);
      speakers.show(standing, chosen, over, hits.speakers);
      // From the listener's own eyes every line would run into the lens.
      showImage(shown);
      showWaves(shown);
      // Waves are the sound itself: lines to where it goes would only be lines among lines.
      lines.group.visible = lookedThrough === null && !painted && !waves.group.visible;
      const emphasis = { selected: chosen, hovered: over, underneath: image.shown() !== null };
      const head = seat?.head ?? ORIGIN;
      lines.show(head, arrivals, placed, emphasis, around);
      reflections.show(head, reflecting, placed, lookedThrough === null);
    },
    /** Moves what is on its way to where it is now. */
    flow: () => waves.at(slowMotionStore.getState().time),
    /** Keep-clear zones the selected speaker reaches into. */
    zonesHit: () => hits.zones,
    /** What stands in the way of the lines looked at, and of the selected speaker itself. */
    inTheWay: () => inTheWay,
    words: (frame: WordsFrame, zones: readonly { zone: KeepClearZone; middle: Vec3 }[]) =>
      wordsFor({
        ...frame,
        zones,
        speakers: speakers.shown(),
        lines: overPaint || waves.group.visible ? [] : lines.shown(),
        reflections: reflections.shown(),
        fan: image.shown(),
        pillars: pillar.shown(),
        runsInto: hits,
      }),
    dispose() {
      images.end();
      for (const part of Object.values(parts)) part.dispose();
    },
  };
}

/** What a speaker itself runs into is marked as what its line does. */
const withBodies = (way: InTheWay, { bodies }: RunsInto): InTheWay =>
  bodies.size === 0 ? way : { ...way, blocking: new Set([...way.blocking, ...bodies]) };

export type OptionDrawing = ReturnType<typeof createOptionDrawing>;

/** An option as the plan shown has it. */
const inputOf = (option: OptionResult | null): OptionInput | null =>
  planStore.shown().options.find(({ id }) => id === option?.id) ?? null;

/** The speakers of an option, as the plan shown has them. */
export const speakersOf = (option: OptionResult | null): readonly SpeakerInput[] =>
  inputOf(option)?.speakers ?? [];
