/** What a speaker is, copies of it, and pairs tied and untied. */
import { castDraft } from 'immer';
import type { Side, SpeakerInput } from '../../geometry';
import { mirrorAim, otherSide } from '../mirror';
import type { PlanOption } from '../types';
import { mendMeasured, mendPairs, mendPockets, renamePair } from './mend-references';
import { mirrorPlace } from './move-speaker';
import {
  assign,
  findOption,
  findSpeaker,
  freeId,
  freePairId,
  type PlanRecipe,
  plain,
  same,
  tiedTwin,
  twinOf,
} from './recipe';

export interface SpeakerFields {
  role?: SpeakerInput['role'];
  diaphragm?: number | null;
  bandHz?: readonly [number, number] | null;
  body?: SpeakerInput['body'] | null;
}

/**
 * Changes what a speaker is; `null` takes a field away. A tied pair changes together, and the role
 * always does: a pair is the left and right speakers of one role.
 */
export function changeSpeaker(
  optionId: string,
  speakerId: string,
  fields: SpeakerFields,
): PlanRecipe {
  return (draft) => {
    const found = findSpeaker(draft, optionId, speakerId);
    if (!found) return;
    const { option, speaker } = found;
    const { role, ...rest } = fields;
    const twin = twinOf(option, speaker);
    const tied = tiedTwin(option, speaker);
    for (const one of tied ? [speaker, tied] : [speaker]) assign(one, castDraft(rest));
    if (role === undefined || role === speaker.role) return;
    const pair = speaker.pair;
    const renamed = pair !== undefined && isNamedAfterRole(pair, speaker.role);
    speaker.role = role;
    if (twin) twin.role = role;
    if (!renamed) return;
    const next = freePairId(plain(option) as PlanOption, role);
    speaker.pair = next;
    if (twin) twin.pair = next;
    renamePair(option, pair, next);
  };
}

const isNamedAfterRole = (pair: string, role: string): boolean =>
  pair === role || (pair.startsWith(`${role}-`) && /^\d+$/.test(pair.slice(role.length + 1)));

/** How far a copy stands from its original, as a part of the panel or mm. */
const COPY_STEP = { uv: 0.08, mm: 40 };

/** Copies a speaker, with its tied twin, a little way off. */
export function copySpeaker(optionId: string, speakerId: string): PlanRecipe {
  return (draft) => {
    const found = findSpeaker(draft, optionId, speakerId);
    if (!found) return;
    const { option, speaker } = found;
    const twin = tiedTwin(option, speaker);
    const copy = plain(speaker) as SpeakerInput;
    const pair = twin ? freePairId(plain(option) as PlanOption, speaker.role) : undefined;
    const moved = stepAside(copy);
    const { pair: _, ...alone } = moved;
    const taken = option.speakers.map(({ id }) => id);
    const made = castDraft<SpeakerInput>(
      pair
        ? { ...moved, pair, id: `${pair}-${speaker.side}` }
        : { ...alone, id: freeId(stem(speaker.id), taken) },
    );
    option.speakers.push(made);
    if (!twin || !pair) return;
    const second = castDraft<SpeakerInput>({
      ...(plain(twin) as SpeakerInput),
      pair,
      id: `${pair}-${twin.side}`,
    });
    option.speakers.push(second);
    mirrorPlace(draft, made, second);
  };
}

const stem = (id: string): string => id.replace(/-\d+$/, '');

function stepAside(speaker: SpeakerInput): SpeakerInput {
  if (speaker.mount) {
    const { u } = speaker.mount;
    const step = u + COPY_STEP.uv <= 1 ? COPY_STEP.uv : -COPY_STEP.uv;
    return { ...speaker, mount: { ...speaker.mount, u: u + step } };
  }
  if (!speaker.position) return speaker;
  const [x, y, z] = speaker.position;
  return { ...speaker, position: [x + COPY_STEP.mm, y, z] };
}

/** Takes a speaker away, and with `withTwin` the other one of its pair. */
export function removeSpeaker(optionId: string, speakerId: string, withTwin: boolean): PlanRecipe {
  return (draft) => {
    const found = findSpeaker(draft, optionId, speakerId);
    if (!found) return;
    const { option, speaker } = found;
    const gone = [speaker.id, withTwin ? twinOf(option, speaker)?.id : undefined];
    option.speakers = option.speakers.filter(({ id }) => !gone.includes(id));
    mendPairs(option);
    mendPockets(option);
    mendMeasured(option);
  };
}

/**
 * Ties or unties a pair. Tying moves nothing by itself; with `lead` the other side goes to the
 * mirror image of that side, its aim and the ring it stands on included.
 */
export function tiePair(optionId: string, pair: string, tied: boolean, lead?: Side): PlanRecipe {
  return (draft) => {
    const option = findOption(draft, optionId);
    if (!option?.speakers.some((s) => s.pair === pair)) return;
    if (!tied) {
      if (!option.untied?.some((id) => id === pair)) {
        option.untied = [...(option.untied ?? []), pair];
      }
      return;
    }
    const untied = option.untied?.filter((id) => id !== pair) ?? [];
    assign(option, { untied: untied.length > 0 ? untied : null });
    const leader = option.speakers.find((s) => s.pair === pair && s.side === lead);
    const follower =
      lead && option.speakers.find((s) => s.pair === pair && s.side === otherSide(lead));
    if (!leader || !follower) return;
    mirrorPlace(draft, leader, follower);
    const aim = leader.aim && plain(leader.aim);
    const image = aim && (aim.kind === 'seat' ? aim : mirrorAim(aim));
    if (!same(image, follower.aim)) assign(follower, { aim: image && castDraft(image) });
    const ring = leader.ring && plain(leader.ring);
    if (!same(ring, follower.ring)) assign(follower, { ring: ring && castDraft(ring) });
  };
}
