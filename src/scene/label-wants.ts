/** Which words the drawing carries, where, and which matter most. */
import type { CabinModel, FitProblem, KeepClearZone, Vec3 } from '../geometry';
import { mix } from '../geometry';
import { seatName, speakerName } from '../plan/names';
import { formatLength } from '../plan/units';
import { sessionStore } from '../store';
import { isLookedAt } from './attention';
import type { LabelWant } from './labels';
import type { ShownFan } from './parts/image-part';
import type { ShownLine } from './parts/lines-part';
import type { ShownPillar } from './parts/pillar-part';
import type { ShownReflection } from './parts/reflections-part';
import type { ShownSpeaker } from './parts/speakers-part';
import type { RunsInto } from './runs-into';
import { imageWants } from './words/image-words';
import { lineWants, shortLineWords } from './words/line-words';
import { pillarWants } from './words/pillar-words';
import { reflectionWants } from './words/reflection-words';
import { shortSide } from './words/short-side';
import { nameOf, placeOf, radiusOnSheet, type WordsFrame } from './words/want';

export interface WordsInput extends WordsFrame {
  speakers: readonly ShownSpeaker[];
  lines: readonly ShownLine[];
  reflections: readonly ShownReflection[];
  fan: ShownFan | null;
  pillars: readonly ShownPillar[];
  runsInto: RunsInto;
  zones: readonly { zone: KeepClearZone; middle: Vec3 }[];
}

export function wordsFor(input: WordsInput): LabelWant[] {
  const { view, showImage } = sessionStore.getState();
  const onEdge = view === 'side' || view === 'front';
  return [
    ...speakerWants(input),
    ...(view === 'seat' ? [] : lineWants(input, input.lines)),
    ...reflectionWants(input, input.reflections),
    ...(showImage ? imageWants(input, input.fan, onEdge) : []),
    ...pillarWants(input, input.pillars),
    ...intoWants(input),
    ...seatWants(input),
    ...zoneWants(input),
    ...obstacleWants(input),
  ];
}

function speakerWants(input: WordsInput): LabelWant[] {
  const { seat, hovered, among } = input;
  const { selection, lengthUnit, view } = sessionStore.getState();
  return input.speakers.flatMap(({ speaker, placed, body, tip }): LabelWant[] => {
    const strong = isLookedAt('speaker', speaker.id, hovered);
    const arrival = seat?.arrivals.find((one) => one.speaker === speaker.id);
    // From the seat there are no lines to stand beside, so the length joins the name.
    const length = view === 'seat' && arrival ? `  ${shortLineWords(arrival, lengthUnit)}` : '';
    const name: LabelWant = {
      id: `speaker:${speaker.id}`,
      kind: 'speaker',
      text: shortSide(speakerName(speaker, among)) + length,
      ...placeOf(input, placed.position),
      gap: 12 + radiusOnSheet(input, placed.position, body.flange / 2),
      weight: strong ? 120 : 60,
      strong,
      data: { speaker: speaker.id },
    };
    if (!tip || selection?.kind !== 'speaker' || selection.id !== speaker.id) return [name];
    const handle: LabelWant = {
      id: `tip:${speaker.id}`,
      kind: 'tip',
      text: '',
      ...placeOf(input, tip),
      gap: 0,
      weight: 210,
      data: { aim: speaker.id },
    };
    return [name, handle];
  });
}

/** At the selected speaker, the worst it runs into. */
function intoWants(input: WordsInput): LabelWant[] {
  const { selection, lengthUnit } = sessionStore.getState();
  const { worst } = input.runsInto;
  const own = input.speakers.find(
    ({ speaker }) => selection?.kind === 'speaker' && speaker.id === selection.id,
  );
  if (!worst || !own) return [];
  const gap = 16 + radiusOnSheet(input, own.placed.position, own.body.flange / 2);
  const by = worst.by === null ? 'stands inside' : `${formatLength(worst.by, lengthUnit)} into`;
  const text = `${by} ${metName(input, worst)}`;
  const place = placeOf(input, own.placed.position);
  return [{ id: 'into', kind: 'into', text, ...place, gap, weight: 110, strong: true }];
}

function metName(input: WordsInput, { with: id = '', kind }: FitProblem): string {
  const speaker = kind === 'speaker' && input.among.find((one) => one.id === id);
  if (speaker) return `the ${speakerName(speaker, input.among)}`;
  const zone = kind === 'zone' && input.cabin.keepClear.find((one) => one.id === id);
  return zone ? `keep-clear: ${zone.name.split(',')[0]}` : `the ${nameOf(input, id)}`;
}

function seatWants(input: WordsInput): LabelWant[] {
  const { cabin, seat, hovered } = input;
  const { view } = sessionStore.getState();
  return cabin.seats.flatMap((model): LabelWant[] => {
    const strong = isLookedAt('seat', model.id, hovered);
    const current = model.id === seat?.id;
    if (view === 'seat' && current) return [];
    return [
      {
        id: `seat:${model.id}`,
        kind: 'seat',
        text: current || strong ? seatName(model.id) : '',
        ...placeOf(input, model.head),
        gap: 14 + radiusOnSheet(input, model.head, 110),
        weight: strong ? 115 : current ? 50 : 1,
        strong,
        data: { seat: model.id },
      },
    ];
  });
}

function zoneWants(input: WordsInput): LabelWant[] {
  const named = new Set<string>();
  return input.zones.flatMap(({ zone, middle }): LabelWant[] => {
    // "left curtain airbag, over the rear door" and its like are one name on the drawing.
    const text = zone.name.split(',')[0] ?? zone.name;
    if (named.has(text)) return [];
    named.add(text);
    const at = placeOf(input, middle);
    return [{ id: `zone:${zone.id}`, kind: 'zone', text, ...at, gap: 0, weight: 10 }];
  });
}

function obstacleWants(input: WordsInput): LabelWant[] {
  return input.cabin.obstacles.flatMap((obstacle): LabelWant[] => {
    if (!isLookedAt('obstacle', obstacle.id, input.hovered)) return [];
    return [
      {
        id: `obstacle:${obstacle.id}`,
        kind: 'obstacle',
        text: obstacle.name,
        ...placeOf(input, middleOf(obstacle.shape)),
        gap: 10,
        weight: 100,
        strong: true,
      },
    ];
  });
}

function middleOf(shape: CabinModel['obstacles'][number]['shape']): Vec3 {
  switch (shape.shape) {
    case 'box':
    case 'ring':
      return shape.center;
    case 'capsule':
      return mix(shape.from, shape.to, 0.5);
    case 'mesh':
      return shape.vertices[0] ?? [0, 0, 0];
  }
}
