import type { Role } from '../input';
import type { SeatResult } from '../result';
import { OCTAVES_HZ } from '../sound/bands';
import {
  createImagePredictor,
  type ImageBand,
  type ImagePredictor,
  type ImageSource,
} from '../sound/image';
import { TIME_CUE_END_HZ } from '../sound/interaural';
import { pairsOf } from '../stage/pairs';
import { polaritiesOf } from './crossings';
import { type DirectAt, directAt, towardsSeatDb, whyNoLevel } from './direct-sound';
import { channelSettings, settingOf } from './settings';
import { missingSide, noSeat, placedOf, SIDES, type Stage, seatOf, seatResultOf } from './stage';

/** Where a centre-panned sound seems to come from at one seat. */
export interface SeatImage {
  seat: string;
  octavesHz: number[];
  /** One for each octave, with the channels' delays and gains. */
  on: ImageBand[];
  /** The same without them. */
  off: ImageBand[];
  /** Which speakers do not take part, and why. */
  reasons?: string[];
}

/** Who plays a centre-panned sound; a subwoofer, rear fill or centre has its own signal. */
const PLAYING: ReadonlySet<Role> = new Set(['tweeter', 'midrange', 'midbass', 'wideband']);

/** What a front stage plays, Hz: a choice of ours. */
const STAGE_OCTAVES_HZ = OCTAVES_HZ.filter((octave) => octave >= 63);

interface Player {
  direct: DirectAt;
  on: ImageSource;
  off: ImageSource;
  why: string | null;
}

const BOTH = { delays: true, gains: true };

/**
 * An image study, which keeps what a single sound would do at the same head, for one speed of
 * sound. The left and right speakers of all pairs whose band contains an octave's centre play it;
 * their crossovers are not counted, so where two bands overlap both play in full.
 * Formulas, sources and limits: those of `createImagePredictor`. A sound that has to go round
 * something comes from where the speaker is, later and softer.
 */
export function createImageStudy(): (stage: Stage, seatId: string) => SeatImage {
  let known: { speed: number; predictor: ImagePredictor } | null = null;
  return (stage, seatId) => {
    const speed = stage.result.speedOfSound;
    if (known?.speed !== speed) known = { speed, predictor: createImagePredictor(speed) };
    const { predictor } = known;
    const seat = seatResultOf(stage, seatId);
    const ears = seatOf(stage, seatId)?.ears;
    const octavesHz = [...STAGE_OCTAVES_HZ];
    if (!seat || !ears) {
      const nowhere = octavesHz.map((octave) => silent(octave, noSeat(seatId)));
      return { seat: seatId, octavesHz, on: nowhere, off: nowhere, reasons: [noSeat(seatId)] };
    }
    const { players, reasons } = playersAt(stage, seat);
    const bands = (which: 'on' | 'off'): ImageBand[] =>
      octavesHz.map((octave) => {
        const playing = players.filter(({ direct: { speaker } }) => plays(speaker.bandHz, octave));
        const unknown = playing.find(({ why }) => why);
        if (unknown?.why) return silent(octave, unknown.why);
        const sources = playing.map((player) => player[which]);
        return predictor.predict(sources, ears, [octave], BOTH)[0] as ImageBand;
      });
    return {
      seat: seatId,
      octavesHz,
      on: bands('on'),
      off: bands('off'),
      ...(reasons.length > 0 && { reasons }),
    };
  };
}

const plays = (bandHz: readonly [number, number] | undefined, octave: number): boolean =>
  bandHz !== undefined && bandHz[0] <= octave && octave <= bandHz[1];

function playersAt(stage: Stage, seat: SeatResult): { players: Player[]; reasons: string[] } {
  const { option, result } = stage;
  const settings = channelSettings(stage);
  const poles = polaritiesOf(option);
  const reasons: string[] = settings.problem
    ? [`without delays and gains: ${settings.problem}`]
    : [];
  const players: Player[] = [];
  for (const members of pairsOf(option.speakers))
    for (const side of SIDES) {
      const id = members[side];
      const direct = id === null ? null : directAt(stage, seat, id);
      const placed = id === null ? null : placedOf(stage, id);
      if (id === null || !direct || !placed) {
        reasons.push(missingSide(members.pair, side));
        continue;
      }
      if (!PLAYING.has(direct.speaker.role)) continue;
      if (!direct.speaker.bandHz) {
        reasons.push(`the plan gives no band for the speaker "${id}", so it is left out`);
        continue;
      }
      const why = whyNoLevel(direct);
      const { delay, gainDb } = settingOf(settings, id);
      const later = (direct.arrival.path - direct.arrival.direct) / result.speedOfSound;
      const source = {
        position: placed.position,
        inverted: poles.get(id) ?? false,
        levelDbAt: (frequencyHz: number) => towardsSeatDb(direct, frequencyHz) ?? 0,
      };
      players.push({
        direct,
        on: { ...source, delay: later + delay, gainDb },
        off: { ...source, delay: later, gainDb: 0 },
        why,
      });
    }
  return { players, reasons };
}

const silent = (frequencyHz: number, reason: string): ImageBand => ({
  frequencyHz,
  cue: frequencyHz < TIME_CUE_END_HZ ? 'time' : 'level',
  time: null,
  levelDb: null,
  coherence: null,
  lateralDeg: null,
  atLimit: false,
  reason,
});
