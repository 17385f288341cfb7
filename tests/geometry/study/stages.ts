/** Stages for studies: bare plans with every number in sight, and their mirror images. */
import {
  type Aim,
  type AlignmentInput,
  evaluatePlan,
  mirrorY,
  type ObstacleInput,
  type OptionInput,
  type PlanInput,
  type SeatInput,
  type Side,
  type SpeakerInput,
  type Vec3,
} from '../../../src/geometry';
import { polaritiesOf, type Stage } from '../../../src/geometry/study';

/** In the middle of the car, looking forward. */
export const HEAD: Vec3 = [1500, 0, 1000];
export const ASIDE: Vec3 = [1500, -370, 1000];

export function planOf(
  speakers: readonly SpeakerInput[],
  more: Partial<PlanInput> & { option?: Partial<OptionInput> } = {},
): PlanInput {
  const { option, ...rest } = more;
  return {
    air: { temperatureC: 20, relativeHumidityPercent: 0, pressureKPa: 101.325 },
    cabin: { template: 'none', wheelSide: 'left' },
    seats: [{ id: 'middle', head: HEAD }],
    options: [{ id: 'a', speakers, ...option }],
    alignment: { seat: 'middle', sampleRateHz: 48000 },
    ...rest,
  };
}

/** The plan's first option with its answer; throws where the engine refuses the plan. */
export function stageOf(plan: PlanInput): Stage {
  const answer = evaluatePlan(plan);
  if (!answer.ok) throw new Error(`${answer.error.path}: ${answer.error.message}`);
  const [option, result] = [plan.options[0], answer.options[0]];
  if (!option || !result) throw new Error('the plan has no option');
  return { plan, cabin: answer.cabin, option, result };
}

export const stage = (...args: Parameters<typeof planOf>): Stage => stageOf(planOf(...args));

type Unit = Partial<SpeakerInput> & Pick<SpeakerInput, 'role'>;

/** A left and a right speaker, the right one at `position` and the left one its mirror image. */
export function pairAt(unit: Unit, position: Vec3, left: Partial<SpeakerInput> = {}) {
  const one = (side: Side): SpeakerInput => ({
    id: `${unit.role}-${side}`,
    pair: unit.role,
    side,
    position: side === 'right' ? position : mirrorY(position),
    aim: { kind: 'point', point: HEAD },
    ...unit,
    ...(side === 'left' && left),
  });
  return [one('left'), one('right')];
}

export const TWEETER: Unit = { role: 'tweeter', bandHz: [2500, 20000], diaphragm: 25 };
export const MIDRANGE: Unit = { role: 'midrange', bandHz: [300, 2500], diaphragm: 58 };
export const MIDBASS: Unit = { role: 'midbass', bandHz: [60, 300], diaphragm: 130 };

/** Everything on the other side of the car, left and right swapped in sides, not in names. */
export function mirrored(plan: PlanInput): PlanInput {
  const other = (side: Side | undefined) =>
    side === undefined ? undefined : side === 'left' ? 'right' : 'left';
  return {
    ...plan,
    seats: plan.seats?.map(
      (seat): SeatInput => ({
        ...seat,
        head: mirrorY(seat.head as Vec3),
        facingDeg: -(seat.facingDeg ?? 0),
      }),
    ),
    obstacles: plan.obstacles?.map(mirroredObstacle),
    options: plan.options.map((option) => ({
      ...option,
      speakers: option.speakers.map((speaker) => ({
        ...speaker,
        side: other(speaker.side),
        position: mirrorY(speaker.position as Vec3),
        aim: speaker.aim && mirroredAim(speaker.aim),
      })),
    })),
  };
}

function mirroredAim(aim: Aim): Aim {
  if (aim.kind === 'direction') return { ...aim, direction: mirrorY(aim.direction) };
  return aim.kind === 'point' ? { ...aim, point: mirrorY(aim.point) } : aim;
}

function mirroredObstacle(obstacle: ObstacleInput): ObstacleInput {
  if (obstacle.shape !== 'box' || obstacle.turnDeg)
    throw new Error('mirrored: expected boxes that are not turned');
  return { ...obstacle, center: mirrorY(obstacle.center) };
}

export const aligned = (more: Partial<AlignmentInput>): AlignmentInput => ({
  sampleRateHz: 48000,
  ...more,
});

/** Which speakers of an option play with their poles swapped, as an object. */
export const poles = (option: OptionInput): Record<string, boolean> =>
  Object.fromEntries(polaritiesOf(option));
