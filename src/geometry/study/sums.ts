import type { Side } from '../input';
import type { SeatResult } from '../result';
import {
  type CrossedSpeaker,
  type CrossoverResult,
  crossoverAtSeat,
  lateness,
} from '../sound/crossover-sum';
import { spreadingDb } from '../sound/level';
import { type PairMembers, pairsOf } from '../stage/pairs';
import { type Crossing, crossingProblem, crossingsOf, polaritiesOf } from './crossings';
import { type DirectAt, directAt, towardsSeatDb, whyNoLevel } from './direct-sound';
import { type ChannelSettings, channelSettings, settingOf } from './settings';
import { missingSide, noSeat, SIDES, type Stage, seatResultOf } from './stage';

/** How the two speakers of one side add up round a crossover at a seat. */
export interface SideSum {
  side: Side;
  crossing: Crossing;
  /** Ids of the speakers below and above; `null` where one is missing. */
  low: string | null;
  high: string | null;
  /** How much later the upper one arrives, delays included, ms. */
  late: number | null;
  result: CrossoverResult | null;
  /** Why something above is null; or, beside a result, what it leaves out. */
  reasons?: string[];
}

/**
 * The sums of every hand-over at a seat, left and right, after the delays and gains of
 * {@link channelSettings} and with the poles each speaker has. Each pair counts as 0 dB on its axis
 * at 1 m, since how loud it is set is the tune's business; distance, directivity and obstruction
 * then tell how far they are from it here. Sources and limits: those of `crossoverSum`.
 */
export function sumsAt(stage: Stage, seatId: string): SideSum[] {
  const { option } = stage;
  const seat = seatResultOf(stage, seatId);
  const pairs = new Map(pairsOf(option.speakers).map((members) => [members.pair, members]));
  const settings = channelSettings(stage);
  const poles = polaritiesOf(option);
  return crossingsOf(option).flatMap((crossing) =>
    SIDES.map((side): SideSum => {
      const { below, above } = crossing.crossover;
      const [low, high] = [pairs.get(below)?.[side] ?? null, pairs.get(above)?.[side] ?? null];
      const sum = { side, crossing, low, high };
      const none = (reasons: string[]) => ({ ...sum, late: null, result: null, reasons });
      if (!seat) return none([noSeat(seatId)]);
      const problem = crossingProblem(crossing.crossover);
      if (problem) return none([problem]);
      const missing = [below, above].flatMap((pair) => whyMissing(pairs.get(pair), pair, side));
      if (missing.length > 0) return none(missing);
      const [lower, upper] = [low, high].map((id) =>
        crossed(stage, seat, id as string, settings, poles),
      ) as [Crossed, Crossed];
      if (!lower.crossed || !upper.crossed)
        return none([lower, upper].flatMap(({ why }) => (why ? [why] : [])));
      const pair = {
        crossover: crossing.crossover,
        low: lower.crossed,
        high: upper.crossed,
        speed: stage.result.speedOfSound,
      };
      const reasons = [
        ...(settings.problem ? [`without delays and gains: ${settings.problem}`] : []),
        ...[lower, upper].flatMap(({ direct }) => beyond(direct, crossing)),
      ];
      return {
        ...sum,
        late: lateness(pair),
        result: crossoverAtSeat(pair),
        ...(reasons.length > 0 && { reasons }),
      };
    }),
  );
}

function whyMissing(members: PairMembers | undefined, pair: string, side: Side): string[] {
  if (!members) return [`there is no pair "${pair}" in this option`];
  return members[side] === null ? [missingSide(pair, side)] : [];
}

interface Crossed {
  direct: DirectAt | null;
  crossed: CrossedSpeaker | null;
  why: string | null;
}

function crossed(
  stage: Stage,
  seat: SeatResult,
  id: string,
  settings: ChannelSettings,
  poles: ReadonlyMap<string, boolean>,
): Crossed {
  const direct = directAt(stage, seat, id);
  if (!direct) return { direct, crossed: null, why: `the answer has no speaker "${id}"` };
  const { arrival } = direct;
  // The loss round an edge is told against the free straight line, so that is what spreads.
  const spreading = spreadingDb(arrival.direct);
  const why = whyNoLevel(direct);
  if (why || spreading === null) return { direct, crossed: null, why };
  const { delay, gainDb } = settingOf(settings, id);
  const speaker: CrossedSpeaker = {
    path: arrival.path,
    delay,
    levelDb: (frequencyHz) => spreading + gainDb + (towardsSeatDb(direct, frequencyHz) ?? 0),
    inverted: poles.get(id) ?? false,
  };
  return { direct, crossed: speaker, why: null };
}

/** What the curve has to do without: two octaves to either side are more than many measure. */
function beyond(direct: DirectAt | null, { crossover: { frequencyHz } }: Crossing): string[] {
  const range = direct?.law.rangeHz;
  if (!direct || !range) return [];
  if (range[0] <= frequencyHz / 4 && range[1] >= frequencyHz * 4) return [];
  return [
    `speaker "${direct.speaker.id}": its responses run from ${range[0]} to ${range[1]} Hz; outside, the nearest level stands in`,
  ];
}
