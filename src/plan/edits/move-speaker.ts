/** Where a speaker stands and which way it looks. Tied pairs move as mirror images. */
import { castDraft, type Draft } from 'immer';
import {
  type Aim,
  distance,
  type Mount,
  mirrorY,
  type PanelInput,
  type SpeakerInput,
  type Vec3,
} from '../../geometry';
import { mirrorAim, mirrorMount, mirrorPanelId } from '../mirror';
import type { Plan } from '../types';
import { assign, findSpeaker, type PlanRecipe, plain, positiveZeros, tiedTwin } from './recipe';
import { cabinNow, placedIn } from './surroundings';

type Speaker = Draft<SpeakerInput>;

/** Puts a speaker on a panel, at u and v (0 to 1), `standoff` mm off it (kept when left out). */
export function mountSpeaker(optionId: string, speakerId: string, mount: Mount): PlanRecipe {
  return (draft) => {
    const found = findSpeaker(draft, optionId, speakerId);
    if (!found) return;
    const standoff = mount.standoff ?? found.speaker.mount?.standoff;
    const full: Mount = { ...mount, ...(standoff !== undefined && { standoff }) };
    const twin = tiedTwin(found.option, found.speaker);
    setMount(found.speaker, full);
    if (twin) mirrorPlace(draft, found.speaker, twin);
  };
}

/** Puts a speaker at a free point, mm. An aim along the panel's normal is kept as a direction. */
export function placeSpeakerAt(optionId: string, speakerId: string, position: Vec3): PlanRecipe {
  return (draft) => {
    const found = findSpeaker(draft, optionId, speakerId);
    if (!found) return;
    const twin = tiedTwin(found.option, found.speaker);
    setFree(draft, found.speaker, position);
    if (twin) mirrorPlace(draft, found.speaker, twin);
  };
}

/**
 * Aims a speaker. Its tied twin looks along the mirror image, but an aim at a seat goes for both:
 * who aims a pair at a listener means that listener.
 */
export function aimSpeaker(optionId: string, speakerId: string, aim: Aim): PlanRecipe {
  return (draft) => {
    const found = findSpeaker(draft, optionId, speakerId);
    if (!found) return;
    assign(found.speaker, { aim: castDraft(aim) });
    const twin = tiedTwin(found.option, found.speaker);
    if (twin) assign(twin, { aim: castDraft(aim.kind === 'seat' ? aim : mirrorAim(aim)) });
  };
}

function setMount(speaker: Speaker, mount: Mount): void {
  assign(speaker, { mount: castDraft(mount), position: null });
}

function setFree(draft: Draft<Plan>, speaker: Speaker, position: Vec3): void {
  if (speaker.mount && (speaker.aim === undefined || speaker.aim.kind === 'normal')) {
    // A free point has no panel, so the normal it was mounted along stays as a direction.
    const placed = placedIn(cabinNow(draft), speaker);
    assign(speaker, {
      aim: placed?.normal
        ? castDraft<Aim>({ kind: 'direction', direction: positiveZeros(placed.normal) })
        : undefined,
    });
  }
  assign(speaker, { position: castDraft(position), mount: null });
}

/**
 * Puts `twin` at the mirror image of where `speaker` stands. Derived panels are mirror images of
 * each other; one given by corners may not be, and then the twin stands at the mirrored point.
 */
export function mirrorPlace(draft: Draft<Plan>, speaker: Speaker, twin: Speaker): void {
  if (speaker.position) {
    setFree(draft, twin, mirrorY(plain(speaker.position) as Vec3));
    return;
  }
  if (!speaker.mount) return;
  const mount = plain(speaker.mount) as Mount;
  const cabin = draft.cabin.panels?.length ? cabinNow(draft) : null;
  if (!cabin || hasMirrorImage(plain(draft.cabin.panels ?? []) as PanelInput[], mount.panel)) {
    setMount(twin, mirrorMount(mount));
    return;
  }
  const placed = placedIn(cabin, { ...plain(speaker), mount } as SpeakerInput);
  if (!placed) return;
  if (!twin.aim || twin.aim.kind === 'normal') {
    const axis = placed.normal && positiveZeros(mirrorY(placed.normal));
    assign(twin, {
      aim: axis ? castDraft<Aim>({ kind: 'direction', direction: axis }) : undefined,
    });
  }
  assign(twin, { position: castDraft(mirrorY(placed.position)), mount: null });
}

/** Nearer than this two corners count as mirror images, mm: a tape's reading. */
const CORNER_TOLERANCE = 1;

/** True when the panel and its namesake on the other side are mirror images, u for u and v for v. */
function hasMirrorImage(given: readonly PanelInput[], id: string): boolean {
  const across = mirrorPanelId(id);
  const here = given.find((panel) => panel.id === id);
  const there = given.find((panel) => panel.id === across);
  if (!here && !there) return true;
  if (!here || !there) return false;
  // Across the centreline u turns round, so the corners change places in pairs.
  const order = across === id ? [1, 0, 3, 2] : [0, 1, 2, 3];
  return order.every((to, from) => {
    const image = mirrorY(here.corners[from] as Vec3);
    return distance(image, there.corners[to] as Vec3) <= CORNER_TOLERANCE;
  });
}
