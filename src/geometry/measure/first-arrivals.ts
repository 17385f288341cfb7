import { type CorrelationDelay, correlationDelay } from './correlation-delay';
import {
  type EdgeArrival,
  type EdgeSettings,
  edgeArrival,
  type ImpulseResponse,
  type NoArrival,
} from './edge-arrival';

export interface MeasuredChannel {
  id: string;
  response: ImpulseResponse;
  /** What the channel plays: only these frequencies count in the correlation. */
  bandHz?: readonly [number, number];
}

export interface ArrivalSettings extends EdgeSettings {
  weighting?: 'plain' | 'phase';
  /** The channel the others are correlated with; left out: the one with the least noise. */
  reference?: string;
}

/** One channel's first arrival, both ways. */
export interface FirstArrival {
  id: string;
  edge: EdgeArrival | NoArrival;
  /**
   * By correlation with the reference: its edge, and how much later this channel is. For the
   * reference itself `null`.
   */
  correlation: (CorrelationDelay & { against: string }) | NoArrival | null;
  /** Correlation less edge, ms; `null` where either is missing. */
  disagreementMs: number | null;
  /** `null`: correlation says nothing here. */
  agree: boolean | null;
}

/** What the correlation looks at, around the edge, ms: little but direct sound. Choices of ours. */
const BEFORE = 1;
const AFTER = 2.5;
/** Farther apart the two ways do not agree, ms: some 17 mm. Choice of ours. */
export const AGREE_MS = 0.05;
/** Less alike, two channels cannot be timed by correlation. Choice of ours. */
export const LEAST_LIKENESS = 0.5;

/**
 * First arrivals of channels measured in one set-up: by the rising edge, and by correlating the
 * sound about it with a reference channel's. Edges of unlike impulses (a midbass beside a tweeter)
 * cross their thresholds at different heights; the correlation of unlike sounds says little: where
 * the two ways disagree, look at the impulses.
 * @throws RangeError for a reference that is not there or channels of different rates
 */
export function firstArrivals(
  channels: readonly MeasuredChannel[],
  settings: ArrivalSettings = {},
): FirstArrival[] {
  const rate = channels[0]?.response.sampleRateHz;
  const other = channels.find(({ response }) => response.sampleRateHz !== rate);
  if (other)
    throw new RangeError(
      `firstArrivals: "${other.id}" has ${other.response.sampleRateHz} Hz where the first has ${rate}`,
    );
  if (settings.reference !== undefined && !channels.some(({ id }) => id === settings.reference))
    throw new RangeError(`firstArrivals: no channel "${settings.reference}"`);
  const edges = channels.map(({ response }) => edgeArrival(response, settings));
  const reference = referenceOf(channels, edges, settings.reference);
  return channels.map((channel, i): FirstArrival => {
    const edge = edges[i] as EdgeArrival | NoArrival;
    const bare = { id: channel.id, edge, disagreementMs: null, agree: null };
    if ('problem' in edge) return { ...bare, correlation: edge };
    if (!reference)
      return { ...bare, correlation: { problem: 'no channel can serve as the reference' } };
    if (channel === reference.channel) return { ...bare, correlation: null };
    const [from, to] = [about(reference.channel, reference.edge), about(channel, edge)];
    const found = correlationDelay(from.samples, to.samples, {
      sampleRateHz: channel.response.sampleRateHz,
      weighting: settings.weighting,
      bandHz: shared(reference.channel.bandHz, channel.bandHz),
    });
    if (!found)
      return {
        ...bare,
        correlation: { problem: `it shares no sound with "${reference.channel.id}"` },
      };
    const ms = reference.edge.ms + (to.startMs - from.startMs) + found.ms;
    const disagreementMs = ms - edge.ms;
    return {
      id: channel.id,
      edge,
      correlation: { ...found, ms, against: reference.channel.id },
      disagreementMs,
      agree: found.likeness < LEAST_LIKENESS ? null : Math.abs(disagreementMs) <= AGREE_MS,
    };
  });
}

function referenceOf(
  channels: readonly MeasuredChannel[],
  edges: readonly (EdgeArrival | NoArrival)[],
  wanted: string | undefined,
) {
  let best: { channel: MeasuredChannel; edge: EdgeArrival } | null = null;
  for (const [i, channel] of channels.entries()) {
    const edge = edges[i] as EdgeArrival | NoArrival;
    if ('problem' in edge || (wanted !== undefined && channel.id !== wanted)) continue;
    if (!best || (edge.noiseDb ?? 0) < (best.edge.noiseDb ?? 0)) best = { channel, edge };
  }
  return best;
}

/** Both bands' common part; the whole of the one that is given. */
function shared(
  a: readonly [number, number] | undefined,
  b: readonly [number, number] | undefined,
): readonly [number, number] | undefined {
  return a && b ? [Math.max(a[0], b[0]), Math.min(a[1], b[1])] : (a ?? b);
}

/** The sound about an edge, faded in and out over half of what stands before it. */
function about({ response }: MeasuredChannel, edge: EdgeArrival) {
  const { samples, sampleRateHz, startMs = 0 } = response;
  const perMs = sampleRateHz / 1000;
  const at = (edge.ms - startMs) * perMs;
  const from = Math.max(0, Math.floor(at - BEFORE * perMs));
  const to = Math.min(samples.length, Math.ceil(at + AFTER * perMs));
  const fade = Math.max(1, (BEFORE * perMs) / 2);
  const part = Float64Array.from({ length: to - from }, (_, i) => {
    const edgeDistance = Math.min(i, to - from - 1 - i);
    const share = Math.min(1, (edgeDistance + 0.5) / fade);
    return (samples[from + i] as number) * Math.sin((Math.PI / 2) * share) ** 2;
  });
  return { samples: part, startMs: startMs + from / perMs };
}
