import type { Side } from '../input';
import { clamp, degrees, direction, dot, radians, sub, type Vec3 } from '../vector';
import { pressureRatio } from './decibels';
import {
  interauralLevelDb,
  interauralTime,
  isAtHead,
  octaveAtEars,
  type SphericalHead,
  sphericalHead,
} from './ear-signals';
import { TIME_CUE_END_HZ } from './interaural';

/** One of the speakers that play the same, centre-panned sound. */
export interface ImageSource {
  position: Vec3;
  /** Of its channel, ms. */
  delay: number;
  /** Of its channel, dB. */
  gainDb: number;
  /** Directivity and obstruction towards this seat, dB by frequency; left out: none. Spreading is
   * counted here, from the position. */
  levelDbAt?: (frequencyHz: number) => number;
  /** Poles swapped. Left out: not. */
  inverted?: boolean;
}

/** Whether the channels' delays and gains are on. */
export interface ImageSettings {
  delays: boolean;
  gains: boolean;
}

/** Where one octave of a centre-panned sound seems to come from. */
export interface ImageBand {
  frequencyHz: number;
  /** What the ears go by in this octave. */
  cue: 'time' | 'level';
  /** Right ear ahead of the left, ms. */
  time: number | null;
  /** Right ear over left, dB. */
  levelDb: number | null;
  /** How alike the ears hear, 0 to 1. */
  coherence: number | null;
  /** From the plane between the ears, positive to the right; behind is not told from in front. */
  lateralDeg: number | null;
  /** The difference is the largest a single sound makes, or more: at least this far to the side. */
  atLimit: boolean;
  /** Why `lateralDeg` is null. */
  reason?: string;
}

export interface ImagePredictor {
  /**
   * @param sources usually the left and the right speaker of a pair
   * @param ears of the seat, mm
   * @param octavesHz nominal octave centres, see `octaveCentres`
   */
  predict(
    sources: readonly ImageSource[],
    ears: Record<Side, Vec3>,
    octavesHz: readonly number[],
    settings: ImageSettings,
  ): ImageBand[];
}

/** Distance at which the single sound stands that differences are compared with, mm. */
const COMPARED_DISTANCE = 1000;
/** Its angles, degrees. */
const COMPARED_STEP_DEG = 5;
/** Ears less alike than this place no image by time. Choice of ours, no source. */
const LEAST_COHERENCE = 0.3;

interface Comparison {
  lateralDeg: number[];
  /** Times in ms where the ears go by time, otherwise levels in dB. */
  values: number[];
}

/**
 * Predicts the lateral angle of a centre-panned sound, octave by octave: the pressures of all
 * speakers add up at both ears of a rigid spherical head, and the angle told is that of a single
 * sound 1 m away which makes the same difference between them: of time below 1.5 kHz, of level
 * above (duplex theory; Blauert, Spatial Hearing).
 * Limits: direct sound only, no reflections; a sphere has no outer ears or torso; time is read from
 * a steady sound's correlation within ±1 ms, so beyond about 1 ms between speakers, where the ear
 * goes by the first arrival (Blauert), it is no prediction; angles are from the plane between the
 * ears, so front, back and height are not told apart; above 1.5 kHz a sphere's level difference
 * falls again beyond some 50 to 70°, so what is farther out is told as nearer. A hint, not a
 * measurement.
 * Keeps the comparison for each head and octave, so use one predictor for many seats.
 * @param speed mm/ms
 */
export function createImagePredictor(speed: number): ImagePredictor {
  const kept = new Map<string, Comparison>();
  const comparisonFor = ({ radius }: SphericalHead, octaveHz: number): Comparison => {
    const key = `${radius.toFixed(3)} ${octaveHz}`;
    const known = kept.get(key) ?? compare(radius, octaveHz, speed);
    kept.set(key, known);
    return known;
  };
  return {
    predict(sources, ears, octavesHz, settings) {
      const head = sphericalHead(ears);
      return octavesHz.map((octaveHz) => {
        if (!head) return nowhere(octaveHz, 'both ears are in one place');
        if (sources.length === 0) return nowhere(octaveHz, 'no speaker plays this octave');
        if (sources.some(({ position }) => isAtHead(head, position)))
          return nowhere(octaveHz, 'a speaker is at the head');
        const heard = sources.map((source) => ({
          position: source.position,
          delay: settings.delays ? source.delay : 0,
          pressureAt: (f: number) =>
            (source.inverted ? -1 : 1) *
            pressureRatio((settings.gains ? source.gainDb : 0) + (source.levelDbAt?.(f) ?? 0)),
        }));
        const pressures = octaveAtEars(head, heard, octaveHz, speed);
        const time = interauralTime(pressures);
        const levelDb = interauralLevelDb(pressures);
        if (time === null || levelDb === null) return nowhere(octaveHz, 'an ear hears nothing');
        return placed(octaveHz, { ...time, levelDb }, comparisonFor(head, octaveHz));
      });
    },
  };
}

const cueOf = (octaveHz: number) => (octaveHz < TIME_CUE_END_HZ ? 'time' : 'level');

const nowhere = (frequencyHz: number, reason: string): ImageBand => ({
  frequencyHz,
  cue: cueOf(frequencyHz),
  time: null,
  levelDb: null,
  coherence: null,
  lateralDeg: null,
  atLimit: false,
  reason,
});

function placed(
  frequencyHz: number,
  difference: { time: number; levelDb: number; coherence: number },
  comparison: Comparison,
): ImageBand {
  const cue = cueOf(frequencyHz);
  if (cue === 'time' && difference.coherence < LEAST_COHERENCE)
    return {
      ...nowhere(frequencyHz, 'the ears hear too little alike in this octave for a clear image'),
      ...difference,
    };
  const value = cue === 'time' ? difference.time : difference.levelDb;
  const { angle, atLimit } = angleFor(Math.abs(value), comparison);
  return { frequencyHz, cue, ...difference, lateralDeg: angle * Math.sign(value), atLimit };
}

/** The smallest angle whose value reaches `wanted`, between the neighbours by a straight line. */
function angleFor(wanted: number, { values, lateralDeg: angles }: Comparison) {
  const i = values.findIndex((value) => value >= wanted);
  if (i < 0) {
    const largest = values.indexOf(Math.max(...values));
    return { angle: angles[largest] as number, atLimit: true };
  }
  if (i === 0) return { angle: 0, atLimit: false };
  const [from, to] = [values[i - 1] as number, values[i] as number];
  const [a, b] = [angles[i - 1] as number, angles[i] as number];
  return { angle: a + ((b - a) * (wanted - from)) / (to - from), atLimit: false };
}

/** Differences a single sound makes at the same sphere, by its angle from 0 to 90°. */
function compare(radius: number, octaveHz: number, speed: number): Comparison {
  const head: SphericalHead = { centre: [0, 0, 0], radius, rightward: [0, 1, 0] };
  const lateralDeg: number[] = [];
  const values: number[] = [];
  for (let angle = 0; angle <= 90; angle += COMPARED_STEP_DEG) {
    const [x, y] = [Math.cos(radians(angle)), Math.sin(radians(angle))];
    const position: Vec3 = [-COMPARED_DISTANCE * x, COMPARED_DISTANCE * y, 0];
    const source = { position, delay: 0, pressureAt: () => 1 };
    const pressures = octaveAtEars(head, [source], octaveHz, speed);
    const value =
      cueOf(octaveHz) === 'time' ? interauralTime(pressures)?.time : interauralLevelDb(pressures);
    lateralDeg.push(angle);
    values.push(value ?? 0);
  }
  return { lateralDeg, values };
}

/** Angle of a point from the plane between the ears, positive to the right; null at the head. */
export function lateralAngleDeg(point: Vec3, ears: Record<Side, Vec3>): number | null {
  const head = sphericalHead(ears);
  const towards = head ? direction(sub(point, head.centre)) : null;
  return head && towards ? degrees(Math.asin(clamp(dot(towards, head.rightward), -1, 1))) : null;
}
