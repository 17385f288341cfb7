/** Waves are for those who open the slow motion: what draws them is fetched then. */
import { Group } from 'three';
import type { MotionDelays, Seat, Stage } from '../../geometry';
import type { Kit } from '../parts/kit';

type Waves = ReturnType<typeof import('./waves')['createWaves']>;

/** @param ready called when what was fetched can be drawn */
export function createWavesLater(kit: Kit, ready: () => void) {
  const group = new Group();
  let state: 'asleep' | 'fetching' | 'ended' = 'asleep';
  let waves: Waves | null = null;

  function fetch(): void {
    if (state !== 'asleep') return;
    state = 'fetching';
    import('./waves').then(
      ({ createWaves }) => {
        if (state === 'ended') return;
        waves = createWaves(kit);
        group.add(waves.group);
        ready();
      },
      // Cut off before it was ever fetched: the sheet's own drawing stands; asked for again next time.
      () => {
        if (state === 'fetching') state = 'asleep';
      },
    );
  }

  return {
    group,
    /** Takes up the sound on its way to a seat; `null`: nothing is on its way. */
    show(stage: Stage | null, seat: Seat | null, delays: MotionDelays): void {
      group.visible = stage !== null && seat !== null;
      if (group.visible) fetch();
      waves?.show(stage, seat, delays);
    },
    /** Puts every wave where it is at `time`, ms. */
    at(time: number): void {
      waves?.at(time);
    },
    dispose(): void {
      state = 'ended';
      waves?.dispose();
    },
  };
}
