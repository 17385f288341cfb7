/** Adding speakers by role and nominal size, at spots usual for the role. */
import { castDraft, type Draft } from 'immer';
import {
  type CabinModel,
  type Mount,
  mirrorY,
  type Role,
  type Side,
  type SpeakerInput,
  type Vec3,
} from '../../geometry';
import { bodyFor, genericBody, ROLE_HABITS, type Spot } from '../bodies';
import { mirrorMount, otherSide } from '../mirror';
import type { Plan, PlanOption } from '../types';
import { findOption, freeId, freePairId, type PlanRecipe, plain, SIDES } from './recipe';
import { cabinNow } from './surroundings';

/** Where a speaker goes when the cabin has no panel for it, mm: within reach of any dash. */
const FREE_SPOT: Vec3 = [100, -500, 650];

/** Two speakers nearer than this in u and v stand in each other's place. */
const TAKEN = 0.12;

/**
 * Adds the left and right speakers of one role, tied, at the first usual spot that is free.
 * @param nominalSize id or nominal size of a generic body, mm
 */
export function addPair(optionId: string, role: Role, nominalSize: string | number): PlanRecipe {
  return (draft) => {
    const option = findOption(draft, optionId);
    if (!option) return;
    const pair = freePairId(plain(option) as PlanOption, role);
    const left = usualSpot(draft, option, role, 'left');
    for (const side of SIDES) {
      const place = side === 'left' ? left : mirrored(left);
      const id = `${pair}-${side}`;
      option.speakers.push(
        castDraft({ id, role, pair, side, ...place, ...kit(role, nominalSize) }),
      );
    }
  };
}

/**
 * Adds one speaker. With a side it completes a pair of its role that lacks that side, or stands
 * alone on that side; without, it stands on the centreline where the role has a usual spot there,
 * otherwise on the passenger's side (common practice, no source).
 */
export function addSpeaker(
  optionId: string,
  role: Role,
  nominalSize: string | number,
  side?: Side,
): PlanRecipe {
  return (draft) => {
    const option = findOption(draft, optionId);
    if (!option) return;
    const half = side && halfPair(option, role, side);
    if (side && half?.pair) {
      const { id, pair, mount, position, aim, ...rest } = plain(half) as SpeakerInput;
      const place = mount
        ? { mount: mirrorMount(mount) }
        : { position: mirrorY(position ?? FREE_SPOT) };
      const twin = { ...rest, id: freeSpeakerId(option, `${pair}-${side}`), pair, side, ...place };
      option.speakers.push(castDraft({ ...twin, ...kit(role, nominalSize) }));
      return;
    }
    const passenger = otherSide(draft.cabin.wheelSide);
    const place = usualSpot(draft, option, role, side ?? passenger);
    const id = freeSpeakerId(option, side ? `${role}-${side}` : role);
    const named = side ? { id, role, side } : { id, role };
    option.speakers.push(castDraft({ ...named, ...place, ...kit(role, nominalSize) }));
  };
}

type Place = { mount: Mount } | { position: Vec3; aim: SpeakerInput['aim'] };

const mirrored = (place: Place): Place =>
  'mount' in place
    ? { mount: mirrorMount(place.mount) }
    : { ...place, position: mirrorY(place.position) };

/** Everything the size and the role say about a speaker. */
function kit(role: Role, size: string | number): Partial<SpeakerInput> {
  const generic = genericBody(size) ?? genericBody(ROLE_HABITS[role].sizes[0] as string);
  return {
    bandHz: ROLE_HABITS[role].bandHz,
    ...(generic && { diaphragm: generic.diaphragm, body: bodyFor(generic) }),
  };
}

const freeSpeakerId = (option: Draft<PlanOption>, stem: string): string =>
  freeId(
    stem,
    option.speakers.map(({ id }) => id),
  );

function halfPair(option: Draft<PlanOption>, role: Role, side: Side) {
  return option.speakers.find(
    (s) =>
      s.role === role &&
      s.pair !== undefined &&
      s.side === otherSide(side) &&
      !option.speakers.some((t) => t.pair === s.pair && t.side === side),
  );
}

/** The first usual spot of the role that the cabin has and no speaker stands on. */
function usualSpot(draft: Draft<Plan>, option: Draft<PlanOption>, role: Role, side: Side): Place {
  const cabin = cabinNow(draft);
  const mounts = cabin ? candidates(cabin, role, side) : [];
  const free = mounts.find((mount) => !taken(option, mount)) ?? mounts[0];
  if (free) return { mount: free };
  const [x, y, z] = FREE_SPOT;
  return {
    position: [x, side === 'left' ? y : -y, z],
    aim: { kind: 'direction', direction: [1, 0, 0] },
  };
}

function candidates(cabin: CabinModel, role: Role, side: Side): Mount[] {
  const mountable = new Set(cabin.panels.filter((p) => p.mountable).map((p) => p.id));
  const usual = ROLE_HABITS[role].spots.flatMap((spot: Spot): Mount[] => {
    const { panel: stem, ...at } = spot;
    const panel = [stem, `${stem}-${side}`].find((id) => mountable.has(id));
    return panel ? [{ panel, ...at }] : [];
  });
  const further = cabin.panels
    .filter((p) => p.mountable && p.roles.includes(role) && !p.id.endsWith(`-${otherSide(side)}`))
    .map((p): Mount => ({ panel: p.id, u: 0.5, v: 0.5, standoff: 0 }));
  return [...usual, ...further];
}

function taken(option: Draft<PlanOption>, { panel, u, v }: Mount): boolean {
  return option.speakers.some(
    ({ mount }) =>
      mount?.panel === panel && Math.abs(mount.u - u) < TAKEN && Math.abs(mount.v - v) < TAKEN,
  );
}
