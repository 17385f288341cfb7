import type { AimRule, PairRequest, SearchRequest, StageRequest } from '../../../geometry';
import {
  listenersOf,
  panelsFor,
  type SearchDraft,
  type SearchGround,
  type SearchPair,
  searchPairs,
  stagePairs,
  usualStep,
  WHOLE_STAGE,
} from './draft';

export type AnyRequest = SearchRequest | StageRequest;

export const isStageRequest = (request: AnyRequest): request is StageRequest => 'pairs' in request;

export type BuiltRequest =
  | { ok: true; request: AnyRequest }
  /** One sentence for the user. */
  | { ok: false; problem: string };

/**
 * The request the fields stand for, everything named, so that it means the same from the command
 * line whatever is usual there.
 */
export function buildRequest(
  draft: SearchDraft,
  scope: string,
  ground: SearchGround,
): BuiltRequest {
  const pairs = searchPairs(ground.option);
  const asked =
    scope === WHOLE_STAGE ? stagePairs(pairs) : pairs.filter(({ pair }) => pair === scope);
  const refuse = (problem: string): BuiltRequest => ({ ok: false, problem });
  if (asked.length === 0) return refuse('There is no such pair in this option.');
  const seats = listenersOf(draft, ground).map(({ id, weight }) => ({ id, weight }));
  if (seats.length === 0) return refuse('There is no seat to listen from.');
  if (Object.values(draft.want).every((weight) => weight === 0))
    return refuse('Give at least one aim a weight above 0.');
  const rest: PairRequest[] = [];
  for (const pair of asked) {
    const panels = panelsFor(draft, pair, ground);
    if (panels.length === 0) return refuse('Tick at least one panel.');
    rest.push(pairRequest(draft, scope, pair, panels));
  }
  const shared = {
    option: ground.option.id,
    seats,
    answers: draft.answers,
    apart: draft.apart,
  };
  const [first] = rest as [PairRequest];
  return scope === WHOLE_STAGE
    ? { ok: true, request: { ...shared, pairs: rest, want: { pathSpread: draft.pathSpread } } }
    : { ok: true, request: { ...shared, ...first } };
}

function pairRequest(
  draft: SearchDraft,
  scope: string,
  { pair }: SearchPair,
  panels: readonly string[],
): PairRequest {
  const aim = aimRule(draft);
  return {
    pair,
    mirrored: draft.mirrored,
    panels,
    step: draft.step ?? usualStep(scope),
    ...(aim && { aim }),
    require: {
      fits: draft.fits,
      free: draft.free,
      ...(draft.maxOffAxisDeg !== null && { maxOffAxisDeg: draft.maxOffAxisDeg }),
      ...(draft.maxAddedPillarViewDeg !== null && {
        maxAddedPillarViewDeg: draft.maxAddedPillarViewDeg,
      }),
    },
    want: { ...draft.want },
  };
}

function aimRule({ aim, withinDeg }: SearchDraft): AimRule | null {
  if (aim === 'own') return null;
  if (aim === 'normal') return { kind: 'normal' };
  const limit = withinDeg === null ? {} : { withinDeg };
  if (aim === 'between') return { kind: 'between', ...limit };
  return { kind: 'seat', seat: aim.slice('seat:'.length), ...limit };
}
