/** Words and marks on the ways from the speakers to the head. */
import { type Arrival, distance, mix, type Vec3 } from '../../geometry';
import { words } from '../../plan/names';
import { formatLength } from '../../plan/units';
import { type LengthUnit, sessionStore } from '../../store';
import { isLookedAt } from '../attention';
import type { LabelWant } from '../labels';
import type { ShownLine } from '../parts/lines-part';
import { nameOf, placeOf, type WordsFrame } from './want';

export function lineWants(frame: WordsFrame, lines: readonly ShownLine[]): LabelWant[] {
  const { lengthUnit } = sessionStore.getState();
  const wants: LabelWant[] = [];
  const mark = (line: ShownLine, kind: 'cross' | 'bend' | 'pass', point: Vec3, n = 0) =>
    wants.push({
      id: `${kind}:${line.speaker}:${n}`,
      kind,
      text: '',
      ...placeOf(frame, point),
      gap: 0,
      weight: 205,
      strong: isLookedAt('speaker', line.speaker, frame.hovered),
      data: { [kind]: line.speaker },
    });
  for (const line of lines) {
    const { speaker, arrival, way } = line;
    const strong = isLookedAt('speaker', speaker, frame.hovered);
    const at = (k: number) => placeOf(frame, alongWay(way, k));
    wants.push({
      id: `length:${speaker}`,
      kind: 'length',
      text: strong ? wholeWords(frame, arrival, lengthUnit) : shortLineWords(arrival, lengthUnit),
      // Two fifths along: clear of the speaker's name, and lines have not yet run together.
      ...at(0.4),
      also: [0.52, 0.3, 0.64, 0.22, 0.75].map(at),
      gap: 0,
      weight: strong ? 110 : 30,
      strong,
      beside: strong,
      data: { length: speaker, line: arrival.line },
    });
    if (line.cross) mark(line, 'cross', line.cross);
    line.bends.forEach((bend, n) => {
      mark(line, 'bend', bend, n);
    });
    if (line.pass) mark(line, 'pass', line.pass.onBody);
  }
  return wants;
}

/** "1403 mm, blocked": the length travelled, and whether anything stands on the line. */
export function shortLineWords(arrival: Arrival, unit: LengthUnit): string {
  const length = formatLength(arrival.path, unit);
  if (arrival.line === 'blocked') return `${length}, blocked`;
  return arrival.line === 'grazing' ? `${length}, near miss` : length;
}

/** "1403 mm", and under it "round the steering wheel, +38 mm". */
function wholeWords(frame: WordsFrame, arrival: Arrival, unit: LengthUnit): string {
  const length = formatLength(arrival.path, unit);
  const { line, round, blockedBy, grazedBy, detour } = arrival;
  if (line === 'clear') return length;
  if (line === 'grazing')
    return `${length}\nclose past the ${thingsOf(frame, grazedBy.slice(0, 1))}`;
  if (detour === null) return `${length}\nblocked by the ${thingsOf(frame, blockedBy)}`;
  // What it goes round may be a neighbour of what blocks it; where panels meet nothing is named.
  const things = thingsOf(frame, round.length > 0 ? round : blockedBy);
  return `${length}\nround the ${things}, +${longer(detour, unit)}`;
}

/** "steering wheel", "listener's left thigh", "left arm (front right) and 2 more". */
function thingsOf(frame: WordsFrame, ids: readonly string[]): string {
  const [first] = ids;
  if (first === undefined) return 'bodies near it';
  const name = shortNameOf(frame, first);
  return ids.length > 1 ? `${name} and ${ids.length - 1} more` : name;
}

/** A person's part by whose it is, as short as a drawing wants it. */
function shortNameOf(frame: WordsFrame, id: string): string {
  const name = nameOf(frame, id);
  const occupant = frame.cabin.obstacles.find((one) => one.id === id)?.occupant;
  const part = name.split("'s ")[1];
  if (!occupant || part === undefined) return name;
  if (occupant.seat === frame.seat?.id) return `listener's ${part}`;
  return `${part} (${words(occupant.seat)})`;
}

/** A detour of less than a centimetre matters to the treble, so it keeps a decimal. */
const longer = (mm: number, unit: LengthUnit): string =>
  unit === 'mm' && mm < 9.95 ? formatLength(mm, unit, 1) : formatLength(mm, unit);

/** The point a fraction of the way along a polyline. */
export function alongWay(way: readonly Vec3[], fraction: number): Vec3 {
  let whole = 0;
  for (let i = 1; i < way.length; i++) whole += distance(way[i - 1] as Vec3, way[i] as Vec3);
  let left = whole * fraction;
  for (let i = 1; i < way.length; i++) {
    const [a, b] = [way[i - 1] as Vec3, way[i] as Vec3];
    const step = distance(a, b);
    if (step >= left && step > 0) return mix(a, b, left / step);
    left -= step;
  }
  return way[way.length - 1] ?? [0, 0, 0];
}
