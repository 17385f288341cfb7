/** Which words the drawing carries, where, and which matter most. */
import type { Camera } from 'three';
import type { CabinModel, KeepClearZone, SeatResult, SpeakerInput, Vec3 } from '../geometry';
import { mix } from '../geometry';
import { seatName, speakerName } from '../plan/names';
import { formatLength } from '../plan/units';
import { sessionStore } from '../store';
import type { Hovered } from './drawing';
import type { LabelWant } from './labels';
import type { ShownLine } from './parts/lines-part';
import type { ShownSpeaker } from './parts/speakers-part';
import { spotOf } from './pick/ray';

export interface WordsInput {
  camera: Camera;
  size: { width: number; height: number };
  cabin: CabinModel;
  seat: SeatResult | null;
  hovered: Hovered;
  speakers: readonly ShownSpeaker[];
  lines: readonly ShownLine[];
  zones: readonly { zone: KeepClearZone; middle: Vec3 }[];
  among: readonly SpeakerInput[];
}

export function wordsFor(input: WordsInput): LabelWant[] {
  const { camera, size, cabin, seat, hovered, among } = input;
  const { selection, lengthUnit, view } = sessionStore.getState();
  const wants: LabelWant[] = [];
  const at = (point: Vec3) => {
    const spot = spotOf(camera, size, point);
    const off =
      spot.x < -20 || spot.y < -20 || spot.x > size.width + 20 || spot.y > size.height + 20;
    return { x: spot.x, y: spot.y, hidden: !spot.ahead || off };
  };
  const isChosen = (kind: string, id: string) =>
    (selection?.kind === kind && selection.id === id) ||
    (hovered?.kind === kind && hovered.id === id);

  for (const { speaker, placed, body, tip } of input.speakers) {
    const strong = isChosen('speaker', speaker.id);
    const here = at(placed.position);
    const arrival = seat?.arrivals.find((one) => one.speaker === speaker.id);
    // From the seat there are no lines to stand beside, so the length joins the name.
    const length = view === 'seat' && arrival ? `  ${lengthWords(arrival, lengthUnit)}` : '';
    wants.push({
      id: `speaker:${speaker.id}`,
      kind: 'speaker',
      text: shortSide(speakerName(speaker, among)) + length,
      ...here,
      gap: 12 + radiusOnSheet(at, placed.position, body.flange / 2),
      weight: strong ? 120 : 60,
      strong,
      data: { speaker: speaker.id },
    });
    if (strong && tip && selection?.kind === 'speaker' && selection.id === speaker.id) {
      wants.push({
        id: `tip:${speaker.id}`,
        kind: 'tip',
        text: '',
        ...at(tip),
        gap: 0,
        weight: 200,
        data: { aim: speaker.id },
      });
    }
  }
  if (view !== 'seat') {
    for (const line of input.lines) {
      const strong = isChosen('speaker', line.speaker);
      wants.push({
        id: `length:${line.speaker}`,
        kind: 'length',
        text:
          lengthWords(line.arrival, lengthUnit) + (strong ? blockerWords(cabin, line.arrival) : ''),
        // Two fifths along: clear of the speaker's name, and lines have not yet run together.
        ...at(mix(line.from, line.to, 0.4)),
        also: [0.52, 0.3, 0.64, 0.22].map((k) => at(mix(line.from, line.to, k))),
        gap: 0,
        weight: strong ? 110 : 30,
        strong,
        data: { length: line.speaker, line: line.arrival.line },
      });
      if (!line.cross) continue;
      wants.push({
        id: `cross:${line.speaker}`,
        kind: 'cross',
        text: '',
        ...at(line.cross),
        gap: 0,
        weight: 210,
        strong,
        data: { cross: line.speaker },
      });
    }
  }
  for (const model of cabin.seats) {
    const strong = isChosen('seat', model.id);
    const current = model.id === seat?.id;
    if (view === 'seat' && current) continue;
    wants.push({
      id: `seat:${model.id}`,
      kind: 'seat',
      text: current || strong ? seatName(model.id) : '',
      ...at(model.head),
      gap: 14 + radiusOnSheet(at, model.head, 110),
      weight: strong ? 115 : current ? 50 : 1,
      strong,
      data: { seat: model.id },
    });
  }
  const named = new Set<string>();
  for (const { zone, middle } of input.zones) {
    // "left curtain airbag, over the rear door" and its like are one name on the drawing.
    const text = zone.name.split(',')[0] ?? zone.name;
    if (named.has(text)) continue;
    named.add(text);
    wants.push({
      id: `zone:${zone.id}`,
      kind: 'zone',
      text,
      ...at(middle),
      gap: 0,
      weight: 10,
    });
  }
  for (const obstacle of cabin.obstacles) {
    if (!isChosen('obstacle', obstacle.id)) continue;
    wants.push({
      id: `obstacle:${obstacle.id}`,
      kind: 'obstacle',
      text: obstacle.name,
      ...at(middleOf(obstacle.shape)),
      gap: 10,
      weight: 100,
      strong: true,
    });
  }
  return wants;
}

function lengthWords(arrival: ShownLine['arrival'], unit: 'mm' | 'in'): string {
  const length = formatLength(arrival.path, unit);
  return arrival.line === 'blocked' ? `${length}, blocked` : length;
}

/** " by steering wheel": what stands on the line first. */
function blockerWords(cabin: CabinModel, { line, blockedBy }: ShownLine['arrival']): string {
  const [first] = blockedBy;
  if (line !== 'blocked' || first === undefined) return '';
  const named = (all: readonly { id: string; name: string }[]) =>
    all.find(({ id }) => id === first)?.name;
  return ` by ${named(cabin.obstacles) ?? named(cabin.panels) ?? first}`;
}

/** "left tweeter" → "L tweeter": on the drawing the side is one letter. */
const shortSide = (name: string): string => name.replace(/^left /, 'L ').replace(/^right /, 'R ');

function radiusOnSheet(
  at: (p: Vec3) => { x: number; y: number },
  middle: Vec3,
  radius: number,
): number {
  const [a, b] = [at(middle), at([middle[0], middle[1], middle[2] + radius])];
  const [c, d] = [
    at([middle[0] + radius, middle[1], middle[2]]),
    at([middle[0], middle[1] + radius, middle[2]]),
  ];
  const off = (p: { x: number; y: number }) => Math.hypot(p.x - a.x, p.y - a.y);
  return Math.min(60, Math.max(off(b), off(c), off(d)));
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
