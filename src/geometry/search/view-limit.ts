/** How much of the view past the front pillars a search may give away. */
import type { CabinModel } from '../cabin/model';
import { bodyOf } from '../fit/body';
import type { Plan } from '../fit/obstruction-angle';
import { type PillarSightAnswer, pillarOf, pillarSight } from '../fit/pillar-sight';
import { ringBodyOf } from '../fit/ring-body';
import type { Side, SpeakerInput } from '../input';
import type { Standing } from '../map/fits';
import type { PlacedSpeaker } from '../result';

export interface ViewLimits {
  maxPillarViewDeg: number | null;
  maxAddedPillarViewDeg: number | null;
}

/** Both pillars made ready, with the pods of the speakers that stay. */
export interface ReadyView {
  limits: ViewLimits;
  pillars: ReadonlyMap<string, { side: Side; made: PillarSightAnswer; staying: readonly Plan[] }>;
}

/** `null` where no limit is set: nothing is worked out then. */
export function readyView(
  cabin: CabinModel,
  standing: readonly Standing[],
  limits: ViewLimits,
): ReadyView | null {
  if (limits.maxPillarViewDeg === null && limits.maxAddedPillarViewDeg === null) return null;
  const pillars = (['left', 'right'] as const).map((side) => {
    const panel = pillarOf(side);
    const made = pillarSight(cabin, side);
    const staying = standing.flatMap((one) => (made.ok ? podsOf(made, panel, one) : []));
    return [panel, { side, made, staying }] as const;
  });
  return { limits, pillars: new Map(pillars) };
}

function podsOf(made: PillarSightAnswer, panel: string, { speaker, placed }: Standing): Plan[] {
  const { mount } = speaker;
  if (!made.ok || mount?.panel !== panel) return [];
  const ring = speaker.ring ? ringBodyOf({ speaker, placed }) : null;
  const bodies = [bodyOf({ speaker, placed }), ...(ring ? [ring.body] : [])];
  return bodies.flatMap((body) => made.sight.podOf(body, mount));
}

/** What a speaker puts into the view past the pillar it stands on; empty on any other panel. */
export function podIn(view: ReadyView, speaker: SpeakerInput, placed: PlacedSpeaker): Plan[] {
  const pillar = view.pillars.get(speaker.mount?.panel ?? '');
  return pillar ? podsOf(pillar.made, speaker.mount?.panel ?? '', { speaker, placed }) : [];
}

/**
 * Why a speaker hides too much of the view, as a sentence; `null` where it does not. Counted is all
 * that its pillar hides with every pod on it, as `pillarViews` does; but a speaker that hides
 * nothing more than is hidden without it passes: what the car's own pillar hides is not its doing.
 * @param beside pods on the same pillar of speakers that move along
 */
export function viewProblem(
  view: ReadyView,
  speaker: SpeakerInput,
  placed: PlacedSpeaker,
  beside: readonly Plan[] = [],
): string | null {
  const pillar = view.pillars.get(speaker.mount?.panel ?? '');
  if (!pillar) return null;
  const { side, made } = pillar;
  const unknown = (reason: string) =>
    `what the ${side} A-pillar would hide of the view is not known: ${reason}`;
  if (!made.ok) return unknown(made.reason);
  const pod = podIn(view, speaker, placed);
  if (pod.length === 0) return null;
  const others = [...pillar.staying, ...beside];
  const [without, after] = [made.sight.past(others), made.sight.past([...others, ...pod])];
  if (!after || !without) return unknown('it stands where the head turns');
  if (after.angleDeg <= without.angleDeg) return null;
  const { maxPillarViewDeg: most, maxAddedPillarViewDeg: mostAdded } = view.limits;
  if (most !== null && after.angleDeg > most)
    return `hides ${over(after.angleDeg - most)} more of the view past the ${side} A-pillar than the ${most}° allowed`;
  const added = after.angleDeg - made.sight.bare.angleDeg;
  if (mostAdded !== null && added > mostAdded)
    return `adds ${over(added - mostAdded)} more to what the ${side} A-pillar hides of the view than the ${mostAdded}° allowed`;
  return null;
}

/** "1.3°"; a hair too much is told as such, never as 0.0°. */
const over = (deg: number): string => (deg < 0.05 ? 'less than 0.1°' : `${deg.toFixed(1)}°`);
