import { AGREE_MS, type FirstArrival, LEAST_LIKENESS } from './first-arrivals';

/** By the edge, by correlation, or whichever is the surer one. */
export type ArrivalChoice = 'surer' | 'edge' | 'correlation';

/** Why one of the two is used. */
export type ChosenBecause =
  /** It was asked for. */
  | 'asked'
  /** Correlation was asked for, but has nothing to say. */
  | 'only-edge'
  /** There is no other channel to correlate it with. */
  | 'alone'
  /** The others are correlated with this one. */
  | 'reference'
  /** Both say the same; the edge needs no second channel. */
  | 'agree'
  /** The two channels are too unlike to be correlated. */
  | 'unlike'
  /** Noise raised the threshold, so the edge is late, and the channels are alike. */
  | 'noise'
  /** The two ways do not agree: look at the impulse. */
  | 'disagree';

export interface ChosenArrival {
  id: string;
  /** ms */
  time: number;
  method: 'edge' | 'correlation';
  because: ChosenBecause;
  /** Standard deviation, ms. */
  sd: number;
}

/** Alike enough to overrule an edge in noise. Choice of ours. */
const ALIKE = 0.8;
/** Both ways are right within half a sample (DEVELOPERS.md), evenly spread: its standard deviation. */
const HALF_SAMPLE_SD = 0.5 / Math.sqrt(3);

/**
 * Which of the two first arrivals is used, how sure it is, and why; `null` where there is none.
 * The edge lies before its own first peak by so much as the impulse is soft, and how much earlier
 * than the one thing all impulses share depends on the speaker: anywhere between the two, evenly
 * spread (choice of ours), whose root mean square from its end is what soft impulses add to the
 * uncertainty.
 */
export function chooseArrival(
  found: FirstArrival,
  sampleRateHz: number,
  { wanted = 'surer', alone = false }: { wanted?: ArrivalChoice; alone?: boolean } = {},
): ChosenArrival | null {
  const { id, edge, correlation, agree } = found;
  if ('problem' in edge) return null;
  const sample = 1000 / sampleRateHz;
  const soft = (edge.peakMs - edge.ms) / Math.sqrt(3);
  const sd = Math.sqrt(
    (edge.sdMs ?? 0) ** 2 + (HALF_SAMPLE_SD * sample) ** 2 + Math.max(0, soft) ** 2,
  );
  const byEdge = (because: ChosenBecause): ChosenArrival => ({
    id,
    time: edge.ms,
    method: 'edge',
    because,
    sd,
  });
  const usable = correlation && !('problem' in correlation) ? correlation : null;
  const byCorrelation = (because: ChosenBecause): ChosenArrival | null =>
    usable && { id, time: usable.ms, method: 'correlation', because, sd };
  if (alone) return byEdge('alone');
  if (wanted === 'edge') return byEdge('asked');
  if (correlation === null) return byEdge('reference');
  if (wanted === 'correlation') return byCorrelation('asked') ?? byEdge('only-edge');
  if (!usable || usable.likeness < LEAST_LIKENESS) return byEdge('unlike');
  if (agree) return byEdge('agree');
  const noisy = edge.raisedByNoise || (edge.sdMs ?? 0) > AGREE_MS / 2;
  return (noisy && usable.likeness >= ALIKE ? byCorrelation('noise') : null) ?? byEdge('disagree');
}
