import { type MotionDelays, type SlowMotion, type Stage, slowMotion } from '../../geometry';

/** Works a slow motion out once for each answer, seat and choice of delays. */
export function createMotionKeeper() {
  let kept: { of: readonly unknown[]; motion: SlowMotion } | null = null;
  return {
    of(stage: Stage, seat: string, delays: MotionDelays): SlowMotion {
      const of = [stage.result, stage.plan.alignment, stage.cabin, seat, delays];
      if (!kept?.of.every((one, i) => one === of[i]))
        kept = { of, motion: slowMotion(stage, seat, delays) };
      return kept.motion;
    },
  };
}
