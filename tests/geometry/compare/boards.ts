/** Options on two boards across the car at X = 0, where every path can be told by hand. */
import {
  createEvaluator,
  type OptionInput,
  type PlanInput,
  type SpeakerInput,
  type Stage,
  type Vec3,
} from '../../../src/geometry';
import { ASIDE, planOf } from '../study/stages';

/** u runs outside in, 600 mm, v upward, 800 mm. */
export const BOARDS: PlanInput['cabin'] = {
  template: 'none',
  wheelSide: 'left',
  panels: [-1, 1].map((side) => ({
    id: side < 0 ? 'board-left' : 'board-right',
    corners: [
      [0, side * 700, 0],
      [0, side * 100, 0],
      [0, side * 100, 800],
      [0, side * 700, 800],
    ],
    reflectivity: 0,
  })),
};

/** A spot on a board: u and v of the left speaker, and of the right one where it differs. */
export type Spot = readonly [u: number, v: number];

/** Where it is in the car; speakers stand 10 mm off their board. */
export const pointOn = (side: -1 | 1, [u, v]: Spot): Vec3 => [10, side * (700 - 600 * u), 800 * v];

export function onBoards(
  role: 'midrange' | 'tweeter',
  left: Spot,
  right: Spot = left,
  more: Partial<SpeakerInput> = {},
): SpeakerInput[] {
  return (['left', 'right'] as const).map((side) => {
    const [u, v] = side === 'left' ? left : right;
    return {
      id: `${role}-${side}`,
      role,
      pair: role,
      side,
      mount: { panel: `board-${side}`, u, v, standoff: 10 },
      ...more,
    };
  });
}

export function boardPlan(
  options: readonly (readonly SpeakerInput[])[],
  more: Partial<PlanInput> = {},
): PlanInput {
  return planOf([], {
    cabin: BOARDS,
    seats: [{ id: 'seat', head: ASIDE }],
    alignment: { seat: 'seat', sampleRateHz: 48000 },
    options: options.map((speakers, i): OptionInput => ({ id: 'abcdef'[i] ?? `${i}`, speakers })),
    ...more,
  });
}

/** Every option of a plan with its answer; throws where the engine refuses the plan. */
export function stagesOf(plan: PlanInput): Stage[] {
  const answer = createEvaluator()(plan);
  if (!answer.ok) throw new Error(`${answer.error.path}: ${answer.error.message}`);
  return plan.options.map((option, i) => ({
    plan,
    cabin: answer.cabin,
    option,
    result: answer.options[i] as Stage['result'],
  }));
}
