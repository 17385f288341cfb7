/** What matters: how far a pair's left-right difference gives way when something is a little off. */
import { mirrorWords } from '../cabin/mirror';
import type { Panel } from '../cabin/model';
import { patchPartials } from '../cabin/patch';
import type { Mount, OptionInput, Side } from '../input';
import { speedOfSound } from '../sound/air';
import { type PairMembers, pairsOf } from '../stage/pairs';
import { direction, dot, mirrorY } from '../vector';
import {
  type Length,
  type Lengths,
  lengthsNow,
  SENSITIVITY_STEP,
  type Sign,
  shifted,
  slid,
  trialIn,
} from './sensitivity-trials';
import { missingSide, SIDES, type Stage, seatOf, speakerOf } from './stage';
import type { Along } from './step-along';

export { SENSITIVITY_STEP };

/** What one step does to left − right: the step tried both ways, the way told that does more. */
export interface Change {
  /** mm */
  difference: number;
  /** ms */
  differenceTime: number;
  /** Which way: 1 towards u or v of 1, rearward, warmer; −1 the other way. */
  sign: Sign;
  /** Why the other way could not be tried; absent when it could. */
  oneSided?: string;
}

export interface AlongPanel {
  alongU: Change | null;
  alongV: Change | null;
}

export interface PairSensitivity extends AlongPanel {
  pair: string;
  seat: string;
  /**
   * What moves for `alongU` and `alongV`: both speakers as mirror images, each along its own panel,
   * where the pair is tied; the left one alone where it is not, or where their panels are no mirror
   * images. `null`: nothing can.
   */
  moves: 'mirrored' | 'left' | null;
  /** One speaker off by itself: what a hole marked out wrong on that side does. */
  alone: Record<Side, AlongPanel>;
  /** The seat on its rails; a head placed by hand, along X. */
  seatTravel: Change | null;
  /** No path changes with the temperature, only the time it takes. */
  temperature: Change | null;
  /** Why something above is null; absent when nothing is. */
  reasons?: string[];
}

export interface SensitivityProgress {
  done: number;
  total: number;
}

/** {@link sensitivityInSteps} at one go. */
export function sensitivityOf(stage: Stage, seatId: string): PairSensitivity[] {
  const steps = sensitivityInSteps(stage, seatId);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/**
 * How much each pair's difference at a seat changes per 10 mm of move along the panel, measured on
 * its surface (a stand-off goes along), per 10 mm of seat travel and per 10 °C. The changes are
 * those of paths worked out anew, the way round whatever blocks a line included. None
 * for a seat the plan does not have. One trial at a time, so that a caller can stop.
 */
export function* sensitivityInSteps(
  stage: Stage,
  seatId: string,
): Generator<SensitivityProgress, PairSensitivity[]> {
  const seat = seatOf(stage, seatId);
  if (!seat) return [];
  const complete = pairsOf(stage.option.speakers).filter(({ left, right }) => left && right);
  const speakers = stage.option.speakers.filter(({ id }) =>
    complete.some(({ left, right }) => id === left || id === right),
  );
  const here = lengthsNow(stage, seatId);
  const there = new Map<string, Lengths>();
  const trial = trialIn(stage.cabin, seat);
  const total = 6;
  for (const along of ['u', 'v'] as const) {
    for (const sign of [1, -1] as const) {
      there.set(along + sign, shifted(speakers, trial, along, sign));
      yield { done: there.size, total };
    }
  }
  for (const sign of [1, -1] as const) {
    there.set(`seat${sign}`, slid(speakers, stage, seat, sign));
    yield { done: there.size, total };
  }
  const trials: Trials = {
    here,
    at: (step, sign) => there.get(step + sign) as Lengths,
    panels: trial.panels,
  };
  return pairsOf(stage.option.speakers).map((members) => ofPair(members, stage, seatId, trials));
}

interface Trials {
  here: Lengths;
  at(step: Along | 'seat', sign: number): Lengths;
  panels: ReadonlyMap<string, Panel>;
}

function ofPair(
  members: PairMembers,
  stage: Stage,
  seatId: string,
  { here, at, panels }: Trials,
): PairSensitivity {
  const { pair, left, right } = members;
  const none: AlongPanel = { alongU: null, alongV: null };
  if (left === null || right === null) {
    return {
      pair,
      seat: seatId,
      moves: null,
      ...none,
      alone: { left: none, right: none },
      seatTravel: null,
      temperature: null,
      reasons: SIDES.filter((side) => !members[side]).map((side) => missingSide(pair, side)),
    };
  }
  const reasons: string[] = [];
  const { speedOfSound: speed } = stage.result;
  const base = between(here(left), here(right), speed);
  const told = (what: string, of: (sign: Sign) => Difference): Change | null => {
    const change = larger(base, of(1), of(-1));
    if (!('why' in change)) return change;
    reasons.push(`${what}: ${change.why}`);
    return null;
  };
  const along = (who: string, of: (along: Along, sign: Sign) => [Length, Length]): AlongPanel => ({
    alongU: told(`${who} along u`, (sign) => between(...of('u', sign), speed)),
    alongV: told(`${who} along v`, (sign) => between(...of('v', sign), speed)),
  });
  const alone = {
    left: along('left', (step, sign) => [at(step, sign)(left), here(right)]),
    right: along('right', (step, sign) => [here(left), at(step, sign)(right)]),
  };
  const turns = turnsOf(stage, members, panels);
  const together =
    turns &&
    along('both', (step, sign) => [at(step, sign)(left), at(step, sign * turns[step])(right)]);
  const leftMoves = speakerOf(stage, left)?.mount !== undefined;
  const seatTravel = told('seat travel', (sign) =>
    between(at('seat', sign)(left), at('seat', sign)(right), speed),
  );
  const temperature = told('temperature', (sign) => warmer(stage, base, sign));
  return {
    pair,
    seat: seatId,
    moves: together ? 'mirrored' : leftMoves ? 'left' : null,
    ...(together ?? alone.left),
    alone,
    seatTravel,
    temperature,
    ...(reasons.length > 0 && { reasons: [...new Set(reasons)] }),
  };
}

type Difference = { difference: number; differenceTime: number } | { why: string };

function between(left: Length, right: Length, speed: number): Difference {
  if ('why' in left) return left;
  if ('why' in right) return right;
  const difference = left.path - right.path;
  return { difference, differenceTime: difference / speed };
}

/** Changes nearer than this are equal, ms: rounding alone must not choose the way that is told. */
const EVEN = 1e-9;

/** The change that is larger in time; where both are equal, that of the positive step. */
function larger(base: Difference, plus: Difference, minus: Difference): Change | { why: string } {
  if ('why' in base) return base;
  const change = (there: Difference, sign: Sign): Change | null =>
    'why' in there
      ? null
      : {
          difference: there.difference - base.difference,
          differenceTime: there.differenceTime - base.differenceTime,
          sign,
        };
  const [up, down] = [change(plus, 1), change(minus, -1)];
  if (up && down) {
    return Math.abs(down.differenceTime) > Math.abs(up.differenceTime) + EVEN ? down : up;
  }
  if (up) return 'why' in minus ? { ...up, oneSided: minus.why } : up;
  if (down) return 'why' in plus ? { ...down, oneSided: plus.why } : down;
  return plus as { why: string };
}

/** The same lengths ten degrees warmer, or colder. */
function warmer({ plan, result }: Stage, base: Difference, sign: Sign): Difference {
  if ('why' in base) return base;
  const temperatureC = plan.air.temperatureC + sign * SENSITIVITY_STEP.temperatureC;
  const { speed } = speedOfSound({ ...plan.air, temperatureC });
  const { difference, differenceTime } = base;
  return { difference, differenceTime: (differenceTime * result.speedOfSound) / speed };
}

/** Directions within about 8° of each other's mirror image count as such. */
const ALIKE = 0.99;

/**
 * Which way the right speaker goes along its panel when the left one goes towards 1 and both move
 * as mirror images; `null` where they do not.
 */
function turnsOf(
  stage: Stage,
  { pair, left, right }: PairMembers,
  panels: ReadonlyMap<string, Panel>,
): Record<Along, Sign> | null {
  // Which pairs move on their own the document says, beside what the engine needs.
  const { untied = [] } = stage.option as OptionInput & { untied?: readonly string[] };
  const [l, r] = [left, right].map((id) => id && speakerOf(stage, id)?.mount) as [Mount?, Mount?];
  if (untied.includes(pair) || !l || !r || r.panel !== mirrorWords(l.panel)) return null;
  const [here, there] = [panels.get(l.panel), panels.get(r.panel)];
  if (!here || !there) return null;
  const [a, b] = [patchPartials(here.patch, l.u, l.v), patchPartials(there.patch, r.u, r.v)];
  const turn = (along: 'du' | 'dv'): Sign | null => {
    const [one, other] = [direction(a[along]), direction(b[along])];
    const alike = one && other ? dot(mirrorY(one), other) : 0;
    return Math.abs(alike) < ALIKE ? null : alike > 0 ? 1 : -1;
  };
  const [u, v] = [turn('du'), turn('dv')];
  return u && v ? { u, v } : null;
}
