import type { MotionDelays, Seat, Stage } from '../../geometry';
import type { Kit } from '../parts/kit';
import { createWavesPart } from '../parts/waves-part';
import { createMotionKeeper } from './keep-motion';

/** The sound of one option on its way to one seat. */
export function createWaves(kit: Kit) {
  const part = createWavesPart(kit);
  const motions = createMotionKeeper();
  return {
    group: part.group,
    show(stage: Stage | null, seat: Seat | null, delays: MotionDelays): void {
      if (stage && seat) part.show(motions.of(stage, seat.id, delays), seat, stage.cabin);
      else part.show(null, null, null);
    },
    at: part.at,
    dispose: part.dispose,
  };
}
