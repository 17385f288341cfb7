import type { Side } from '../input';
import type { Arrival, EarArrival } from '../result';
import { channelSettings, settingOf } from '../study/settings';
import { arrivalOf, noSeat, placedOf, type Stage, seatOf, seatResultOf } from '../study/stage';
import { distance, type Vec3 } from '../vector';
import type { Coming, MotionDelays, Reach, Receiver, SlowMotion, Wave } from './types';

/** In this order where several are reached at one time. */
const RECEIVERS: readonly Receiver[] = ['left', 'head', 'right'];

/**
 * What leaves when, and what arrives when, at one seat. Times of arrival are the evaluator's own, by
 * the way the sound takes; `delays: 'aligned'` adds what the plan's alignment says, rounded to whole
 * samples as the processor holds it. Time 0 is when a channel without delay starts.
 * @throws where the plan has no such seat
 */
export function slowMotion(stage: Stage, seatId: string, delays: MotionDelays): SlowMotion {
  const seat = seatOf(stage, seatId);
  const heard = seatResultOf(stage, seatId);
  if (!seat || !heard) throw new Error(`slowMotion: ${noSeat(seatId)}`);
  const settings = delays === 'aligned' ? channelSettings(stage) : null;
  const places: Record<Receiver, Vec3> = { ...seat.ears, head: seat.head };
  const { speedOfSound: speed, id } = stage.result;
  const waves: Wave[] = [];
  const reaches: Reach[] = [];
  for (const speaker of stage.option.speakers) {
    const placed = placedOf(stage, speaker.id);
    const arrival = arrivalOf(heard, speaker.id);
    if (!placed || !arrival) continue;
    const start = settings ? settingOf(settings, speaker.id).delay : 0;
    const centre = placed.position;
    const side: Side | null = speaker.side ?? null;
    const round = comingOf(arrival) === 'round' ? arrival.way : null;
    const { line } = arrival;
    waves.push({
      speaker: speaker.id,
      role: speaker.role,
      side,
      pair: speaker.pair ?? null,
      centre,
      start,
      line,
      round,
    });
    for (const at of RECEIVERS) {
      const one = at === 'head' ? arrival : arrival.ears[at];
      reaches.push({
        speaker: speaker.id,
        at,
        time: start + one.time,
        free: start + distance(centre, places[at]) / speed,
        comes: comingOf(one),
      });
    }
  }
  // Sorting is stable: at one time the speakers stay in their order.
  reaches.sort((a, b) => a.time - b.time);
  return {
    option: id,
    seat: seatId,
    delays,
    speed,
    waves,
    reaches,
    end: reaches[reaches.length - 1]?.time ?? 0,
    alignedFor: settings && !settings.problem ? settings.seat : null,
    ...(settings?.problem && { problem: settings.problem }),
  };
}

function comingOf({ line, path, direct }: Arrival | EarArrival): Coming {
  if (line !== 'blocked') return 'straight';
  return path > direct ? 'round' : 'unknown';
}
