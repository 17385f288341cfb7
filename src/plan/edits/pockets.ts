/** Sealed pockets: drawn round a speaker, their corners moved, their depth and walls changed. */
import { castDraft, type Draft } from 'immer';
import {
  type CabinModel,
  flatPanel,
  isSimple,
  type Mount,
  type Panel,
  type Point2,
  type SealedPocket,
  type SpeakerInput,
} from '../../geometry';
import { bodyFor, genericBody, ROLE_HABITS } from '../bodies';
import { mirrorMount, mirrorPanelId } from '../mirror';
import { MOST_CORNERS } from '../pocket-limits';
import type { PlanOption } from '../types';
import { assign, findOption, findSpeaker, freeId, type PlanRecipe, plain, twinOf } from './recipe';
import { cabinNow } from './surroundings';

/** From the flange to the pocket's edge, mm. Choice of ours, no source: room to draw in. */
const ROUND_FLANGE = 60;
/** Where nothing is known of the depth behind the panel, mm. Choice of ours, no source. */
const USUAL_DEPTH = 120;
/** Laminate of glass fibre: typical value, from memory, mm. */
const USUAL_WALL = 6;

/** A corner nearer to another than this would be the same one, parts of the panel. */
const FINEST = 1e-9;

/**
 * Draws a rectangle round a speaker on a panel and one round its twin, each a pocket of its own;
 * tied ones are mirror images. A speaker that has a pocket or stands on no panel gets none.
 */
export function addPocketPair(optionId: string, speakerId: string): PlanRecipe {
  return (draft) => {
    const found = findSpeaker(draft, optionId, speakerId);
    const cabin = found && cabinNow(draft);
    if (!found || !cabin) return;
    const { option, speaker } = found;
    const twin = twinOf(option, speaker);
    const first = addRound(option, cabin, speaker, null);
    if (twin) addRound(option, cabin, twin, first && { speaker, pocket: first });
  };
}

function addRound(
  option: Draft<PlanOption>,
  cabin: CabinModel,
  speaker: Draft<SpeakerInput>,
  image: { speaker: Draft<SpeakerInput>; pocket: SealedPocket } | null,
): SealedPocket | null {
  const mount = speaker.mount && (plain(speaker.mount) as Mount);
  const panel = cabin.panels.find(({ id }) => id === mount?.panel);
  const taken = option.pockets?.some(({ speakers }) => speakers.includes(speaker.id));
  if (!mount || !panel || taken) return null;
  const like = image?.speaker.mount && mirrorMount(plain(image.speaker.mount) as Mount);
  const mirrored = like && like.panel === mount.panel && like.u === mount.u && like.v === mount.v;
  const pocket: SealedPocket = {
    id: freeId(`pocket-${speaker.side ?? 'middle'}`, option.pockets?.map(({ id }) => id) ?? []),
    panel: mount.panel,
    outline:
      mirrored && image
        ? mirrorOutline(image.pocket, mount.panel)
        : rectangleRound(panel, mount, bodyNow(speaker).flange),
    depth:
      panel.depthBehind && panel.depthBehind > 2 * USUAL_WALL ? panel.depthBehind : USUAL_DEPTH,
    wall: USUAL_WALL,
    speakers: [speaker.id],
  };
  option.pockets = [...(option.pockets ?? []), castDraft(pocket)];
  return pocket;
}

function bodyNow({ body, role }: Draft<SpeakerInput>) {
  const generic = genericBody(ROLE_HABITS[role].sizes[0] ?? '165');
  return body ?? (generic ? bodyFor(generic) : { flange: 160, cutout: 140, depth: 60 });
}

/** Level and upright as the panel is drawn, clear of the flange, and no farther than the panel. */
function rectangleRound(panel: Panel, { u, v }: Mount, flange: number): Point2[] {
  const flat = flatPanel(panel);
  const [x, y] = flat.toFlat([u, v]);
  const half = flange / 2 + ROUND_FLANGE;
  const corners = [
    [x - half, y - half],
    [x + half, y - half],
    [x + half, y + half],
    [x - half, y + half],
  ] as const;
  const outline = corners.map(flat.fromFlat);
  // Beside a slanting edge corners can fall on one another: the panel's own edge then.
  const distinct = outline.every(([a, b], i) =>
    outline.every(([c, d], j) => i === j || Math.abs(a - c) + Math.abs(b - d) > 1e-3),
  );
  return distinct && isSimple(outline)
    ? outline
    : [
        [0, 0],
        [1, 0],
        [1, 1],
        [0, 1],
      ];
}

/** The same outline on the mirrored panel; across one on the centreline u turns round. */
const mirrorOutline = ({ outline, panel }: SealedPocket, onto: string): Point2[] =>
  panel === onto && mirrorPanelId(panel) === panel
    ? outline.map(([u, v]): Point2 => [1 - u, v]).reverse()
    : outline.map(([u, v]): Point2 => [u, v]);

export interface PocketFields {
  panel?: string;
  /** mm, more than 0. */
  depth?: number;
  lies?: 'behind' | 'before' | null;
  wall?: number | null;
  /** Taken out of the pocket they were in. */
  speakers?: readonly string[];
}

/** Changes what a pocket is; `null` takes a field away. */
export function changePocket(
  optionId: string,
  pocketId: string,
  { speakers, ...fields }: PocketFields,
): PlanRecipe {
  return onPocket(optionId, pocketId, (pocket, option) => {
    assign(pocket, fields);
    if (!speakers) return;
    const known = [...new Set(speakers)].filter((id) => option.speakers.some((s) => s.id === id));
    for (const other of option.pockets ?? []) {
      const left = other.speakers.filter((id) => other === pocket || !known.includes(id));
      if (left.length !== other.speakers.length) other.speakers = left;
    }
    assign(pocket, { speakers: known });
  });
}

/** Moves one corner, (u, v) of the panel; one that would make edges cross stays where it is. */
export function movePocketCorner(
  optionId: string,
  pocketId: string,
  corner: number,
  to: Point2,
): PlanRecipe {
  return reshape(optionId, pocketId, (outline) =>
    outline[corner] ? outline.with(corner, within(to)) : null,
  );
}

/** Puts a corner on the middle of the edge that leaves `corner`. */
export function addPocketCorner(optionId: string, pocketId: string, corner: number): PlanRecipe {
  return reshape(optionId, pocketId, (outline) => {
    const [a, b] = [outline[corner], outline[(corner + 1) % outline.length]];
    if (!a || !b || outline.length >= MOST_CORNERS) return null;
    return outline.toSpliced(corner + 1, 0, [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]);
  });
}

/** Takes a corner out; three stay, and none goes whose edges would cross others. */
export function removePocketCorner(optionId: string, pocketId: string, corner: number): PlanRecipe {
  return reshape(optionId, pocketId, (outline) =>
    outline.length > 3 && outline[corner] ? outline.toSpliced(corner, 1) : null,
  );
}

/** Gives a pocket the mirror image of another's outline, on the mirrored panel. */
export function mirrorPocket(optionId: string, fromId: string, toId: string): PlanRecipe {
  return onPocket(optionId, toId, (pocket, option) => {
    const from = option.pockets?.find(({ id }) => id === fromId);
    if (!from || from === pocket) return;
    const source = plain(from) as SealedPocket;
    const panel = mirrorPanelId(source.panel);
    assign(pocket, { panel, outline: castDraft(mirrorOutline(source, panel)) });
  });
}

export function removePocket(optionId: string, pocketId: string): PlanRecipe {
  return (draft) => {
    const option = findOption(draft, optionId);
    const left = option?.pockets?.filter(({ id }) => id !== pocketId);
    if (!option || !left || left.length === option.pockets?.length) return;
    if (left.length > 0) option.pockets = left;
    else delete option.pockets;
  };
}

/** Whether a corner may go there without edges crossing or corners falling on one another. */
export function cornerMayGo(pocket: SealedPocket, corner: number, to: Point2): boolean {
  return (
    pocket.outline[corner] !== undefined && isDrawable(pocket.outline.with(corner, within(to)))
  );
}

const within = ([u, v]: Point2): Point2 => [
  Math.min(1, Math.max(0, u)) + 0,
  Math.min(1, Math.max(0, v)) + 0,
];

function isDrawable(outline: readonly Point2[]): boolean {
  return (
    outline.every(([u, v]) => Number.isFinite(u) && Number.isFinite(v)) &&
    isSimple(outline) &&
    outline.every(([a, b], i) => {
      const [c, d] = outline[(i + 1) % outline.length] as Point2;
      return Math.abs(a - c) + Math.abs(b - d) > FINEST;
    })
  );
}

function onPocket(
  optionId: string,
  pocketId: string,
  change: (pocket: Draft<SealedPocket>, option: Draft<PlanOption>) => void,
): PlanRecipe {
  return (draft) => {
    const option = findOption(draft, optionId);
    const pocket = option?.pockets?.find(({ id }) => id === pocketId);
    if (option && pocket) change(pocket, option);
  };
}

function reshape(
  optionId: string,
  pocketId: string,
  next: (outline: readonly Point2[]) => Point2[] | null,
): PlanRecipe {
  return onPocket(optionId, pocketId, (pocket) => {
    const outline = next((plain(pocket) as SealedPocket).outline);
    if (outline && isDrawable(outline)) assign(pocket, { outline: castDraft(outline) });
  });
}
