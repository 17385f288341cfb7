/** What does not fit a pocket: its speakers in its outline and depth, itself behind its panel. */
import type { CabinModel, Panel } from '../cabin/model';
import type { SealedPocket, SpeakerInput } from '../input';
import { placeSpeaker } from '../stage/place';
import { bodyOf, type StandingSpeaker } from './body';
import { flatPanel } from './flat-panel';
import type { Point2 } from './outline';
import { groundAt } from './panel-ground';
import { depthBehindPanel } from './panel-problems';
import { type PocketSubject, speakersIn } from './plan-pocket';
import { standoffFrom } from './pocket';
import { millimetres, nameOf } from './problem';

/** Less than this is rounding, mm. */
const SLACK = 1e-6;

/**
 * One sentence for each: a speaker on another panel or beside the outline, a cut-out over its edge,
 * a body deeper than the room inside, a pocket deeper than is free behind the panel.
 */
export function pocketMisfits(
  { cabin, option }: PocketSubject & { cabin: Pick<CabinModel, 'panels' | 'seats'> },
  pocket: SealedPocket,
): string[] {
  const panel = cabin.panels.find(({ id }) => id === pocket.panel);
  if (!panel) return [];
  const found: string[] = [];
  const { depthBehind } = panel;
  if (pocket.lies !== 'before' && depthBehind !== null) {
    const deep = pocket.depth - depthBehind;
    if (deep > SLACK)
      found.push(`it is ${millimetres(deep)} deeper than is free behind ${nameOf(panel)}`);
  }
  const flat = flatPanel(panel);
  const seats = new Map(cabin.seats.map((seat) => [seat.id, seat]));
  const outline = pocket.outline.map(flat.toFlat);
  for (const speaker of speakersIn(option, pocket)) {
    const name = `"${speaker.id}"`;
    const { mount, body } = speaker;
    if (mount?.panel !== pocket.panel) {
      found.push(`${name} does not stand on ${nameOf(panel)}`);
      continue;
    }
    if (!body) {
      found.push(`the body of ${name} is not known: no room is taken off for it`);
      continue;
    }
    const inside = toOutline(flat.toFlat([mount.u, mount.v]), outline);
    const over = body.cutout / 2 + (pocket.wall ?? 0) - inside;
    if (inside < 0) found.push(`${name} stands beside its outline`);
    else if (over > SLACK)
      found.push(`the cut-out of ${name} reaches ${millimetres(over)} into its side walls`);
    const place = placeSpeaker(speaker, new Map([[panel.id, panel]]), seats);
    const deep = place.ok ? tooDeep(panel, pocket, { speaker, placed: place.placed }) : 0;
    if (deep > SLACK) found.push(`${name} is ${millimetres(deep)} too deep for it`);
  }
  return found;
}

/** How far the body, turned as it is aimed, reaches into the back wall, mm. */
function tooDeep(panel: Panel, pocket: SealedPocket, standing: StandingSpeaker): number {
  const { u, v, standoff } = standing.speaker.mount as NonNullable<SpeakerInput['mount']>;
  const behind = depthBehindPanel(
    bodyOf(standing),
    groundAt(panel, u, v),
    standoffFrom(pocket, standoff),
  );
  return behind - (pocket.depth - (pocket.wall ?? 0));
}

/** From a place to the nearest edge of a polygon, negative outside. */
function toOutline([x, y]: Point2, polygon: readonly Point2[]): number {
  let least = Infinity;
  let inside = false;
  for (const [i, [ax, ay]] of polygon.entries()) {
    const [bx, by] = polygon[(i + 1) % polygon.length] as Point2;
    const [dx, dy] = [bx - ax, by - ay];
    const t = ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy || 1);
    const k = Math.min(1, Math.max(0, t));
    least = Math.min(least, Math.sqrt((ax + k * dx - x) ** 2 + (ay + k * dy - y) ** 2));
    // Every edge the level line to the right crosses turns outside into inside.
    if (ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * dx) inside = !inside;
  }
  return inside ? least : -least;
}
