/** What a search found, taken into the plan as an option of its own, beside the one searched. */
import { castDraft } from 'immer';
import type { FoundPlace, SpeakerInput } from '../../geometry';
import { mirrorPanelId } from '../mirror';
import { pairName, panelName } from '../names';
import type { PlanOption } from '../types';
import { nextOptionId } from './options';
import { isTied, type PlanRecipe, plain } from './recipe';

type Place = Pick<FoundPlace, 'panel' | 'u' | 'v' | 'standoff' | 'aim'>;

/** A spot as far as a plan keeps it: no measures, no score. */
export type TakenSpot = Place & { partner: Place };

/**
 * Adds a copy of the option searched, right after it, with the pair moved to the spot found: its
 * mount, and its aim where the search gave one. A pair whose two spots are no mirror images is
 * untied, or the next move would mirror it. The copy's id is {@link nextOptionId} of the plan before.
 * @param place 1 for the best answer; for the title, which {@link foundTitle} words
 */
export const takeSpot = (
  optionId: string,
  pair: string,
  spot: TakenSpot,
  place?: number,
): PlanRecipe => takeAll(optionId, [{ ...spot, pair }], place);

/** The same for pairs searched together. */
export const takeStage = (
  optionId: string,
  { spots }: { readonly spots: readonly (TakenSpot & { pair: string })[] },
  place?: number,
): PlanRecipe => takeAll(optionId, spots, place);

function takeAll(
  optionId: string,
  spots: readonly (TakenSpot & { pair: string })[],
  place?: number,
): PlanRecipe {
  return (draft) => {
    const at = draft.options.findIndex(({ id }) => id === optionId);
    const found = draft.options[at];
    if (!found) return;
    const from = plain(found) as PlanOption;
    if (!spots.every(({ pair }) => from.speakers.some((one) => one.pair === pair))) return;
    const moved = spots.reduce(movePair, from);
    const title = foundTitle(from.speakers, spots, place);
    draft.options.splice(at + 1, 0, castDraft({ ...moved, id: nextOptionId(draft), title }));
  };
}

function movePair(option: PlanOption, spot: TakenSpot & { pair: string }): PlanOption {
  const speakers = option.speakers.map((speaker) =>
    speaker.pair === spot.pair
      ? put(speaker, speaker.side === 'right' ? spot.partner : spot)
      : speaker,
  );
  if (isMirrored(spot) || !isTied(option, spot.pair)) return { ...option, speakers };
  return { ...option, speakers, untied: [...(option.untied ?? []), spot.pair] };
}

function put(
  { position: _, ...speaker }: SpeakerInput,
  { panel, u, v, standoff, aim }: Place,
): SpeakerInput {
  return { ...speaker, mount: { panel, u, v, standoff }, ...(aim && { aim }) };
}

/** As the search mirrors a spot: the same u, v across sides, u turned round on a panel across. */
function isMirrored({ panel, u, v, standoff, partner }: TakenSpot): boolean {
  const across = mirrorPanelId(panel);
  return (
    partner.panel === across &&
    partner.u === (across === panel ? 1 - u : u) &&
    partner.v === v &&
    partner.standoff === standoff
  );
}

const ENDINGS = ['th', 'st', 'nd', 'rd'] as const;

/** "1st", "2nd", "11th". */
export function ordinal(n: number): string {
  const teens = n % 100 >= 11 && n % 100 <= 13;
  return `${n}${(teens ? undefined : ENDINGS[n % 10]) ?? 'th'}`;
}

/** "Tweeters on the dash top, 1st of the search", "Tweeters on the A-pillars, mids on the …". */
export function foundTitle(
  among: readonly SpeakerInput[],
  spots: readonly (TakenSpot & { pair: string })[],
  place?: number,
): string {
  const said = spots.map((spot) => `${pairName(spot.pair, among)} ${placeWords(spot)}`).join(', ');
  const title = place === undefined ? said : `${said}, ${ordinal(place)} of the search`;
  return title.charAt(0).toUpperCase() + title.slice(1);
}

/** Left and right are parts of one such thing, and two of anything else. */
const IN_ONE_PIECE = /dash|floor|roof/;

const sideless = (id: string): string => id.replace(/-(left|right)$/, '');

/** "on the dash top", "on the A-pillars"; two panels where left and right stand on unlike ones. */
export function placeWords({ panel, partner }: TakenSpot): string {
  if (panel === partner.panel) return `on the ${panelName(panel)}`;
  if (sideless(panel) !== sideless(partner.panel))
    return `on the ${panelName(panel)} and the ${panelName(partner.panel)}`;
  const name = panelName(sideless(panel));
  return `on the ${name}${IN_ONE_PIECE.test(name) ? '' : 's'}`;
}
