/** How deep a pocket would have to be for a wanted volume. */
import type { Panel } from '../cabin/model';
import { DEEPEST_POCKET } from './deepest-pocket';
import { type PocketInput, pocketOf, speakersLitres } from './pocket';

/** Litres: a thousandth of what a tape can tell. */
const NEAR = 1e-7;
const TRIES = 60;

export type DepthAnswer = { ok: true; depth: number } | { ok: false; message: string };

/**
 * The outside depth at which the same outline with the same walls and speakers has the wanted net
 * volume. The room inside is a prism, so one mesh tells what a millimetre of depth adds; what the
 * speakers take up depends on it as well, so the depth is found by false position (Illinois: the
 * end that stands still counts half).
 * @returns mm, or one sentence saying why no depth gives that volume
 */
export function depthForLitres(panel: Panel, input: PocketInput, litres: number): DepthAnswer {
  if (!(litres > 0 && Number.isFinite(litres)))
    return { ok: false, message: `the volume must be more than 0, got ${litres}` };
  const { wall = 0 } = input;
  const empty = pocketOf(panel, { ...input, depth: DEEPEST_POCKET, speakers: [] });
  if (!empty.ok) return empty;
  const perMm = empty.pocket.netLitres / (DEEPEST_POCKET - 2 * wall);
  const over = (depth: number): number => {
    return perMm * (depth - 2 * wall) - speakersLitres({ ...input, depth }) - litres;
  };
  let [low, high] = [2 * wall, DEEPEST_POCKET];
  let [below, above] = [-litres, over(high)];
  if (above < 0)
    return { ok: false, message: `even ${DEEPEST_POCKET} mm deep it would hold less than that` };
  for (let i = 0; i < TRIES; i++) {
    const depth = high - (above * (high - low)) / (above - below);
    const off = over(depth);
    if (Math.abs(off) < NEAR) return { ok: true, depth };
    if (off < 0) {
      [low, below] = [depth, off];
      above /= 2;
    } else {
      [high, above] = [depth, off];
      below /= 2;
    }
  }
  return { ok: true, depth: high };
}
