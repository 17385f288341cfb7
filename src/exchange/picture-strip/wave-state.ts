import {
  comeRound,
  fromAbove,
  type Receiver,
  radiusAt,
  type SlowMotion,
  type Spot,
  sectionRadius,
  type Wave,
} from '../../geometry';

/** `before`: not left yet; `past`: what arrives has reached the middle of the head. */
export type WaveStage = 'before' | 'coming' | 'past';

/** One wave at one moment, seen from above; mm. */
export interface WaveState {
  wave: Wave;
  stage: WaveStage;
  centre: Spot;
  /** Of the whole sphere, and of the circle it cuts out at the height of the ears: 0 for none. */
  ball: number;
  front: number;
  /** What comes round something: how far it is, and the bends behind it. */
  come: { at: Spot; passed: readonly Spot[] } | null;
}

/** All waves of a motion at a time, at the height of the ears. */
export function waveStates(motion: SlowMotion, time: number, height: number): WaveState[] {
  const { waves, reaches, speed } = motion;
  const heads = new Map(reaches.filter(({ at }) => at === 'head').map((one) => [one.speaker, one]));
  return waves.map((wave) => {
    const come = comeRound(wave, time, speed);
    const there = heads.get(wave.speaker);
    return {
      wave,
      stage: time < wave.start ? 'before' : there && there.time <= time ? 'past' : 'coming',
      centre: fromAbove(wave.centre),
      ball: radiusAt(wave, time, speed),
      front: sectionRadius(wave, time, speed, height) ?? 0,
      come: come && { at: fromAbove(come.at), passed: come.passed.map(fromAbove) },
    };
  });
}

/** True once any sound has reached an ear. */
export const isReached = ({ reaches }: SlowMotion, ear: Receiver, time: number): boolean =>
  reaches.some((reach) => reach.at === ear && reach.time <= time);
