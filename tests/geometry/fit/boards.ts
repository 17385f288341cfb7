/** Flat boards to mount on, and speakers on them: mm, no template. */
import {
  type BoxShape,
  buildCabin,
  type CabinModel,
  type CapsuleShape,
  type FitProblem,
  fitOf,
  type KeepClearInput,
  type ObstacleInput,
  type PanelInput,
  type PanelMeasure,
  type PlanInput,
  placeSpeaker,
  type SpeakerBody,
  type SpeakerInput,
} from '../../../src/geometry';

/** A board in the plane X = 0 that looks rearward, its middle at the origin. */
export const board = (width: number, height = 600, id = 'board'): PanelInput => ({
  id,
  corners: [
    [0, -width / 2, -height / 2],
    [0, width / 2, -height / 2],
    [0, width / 2, height / 2],
    [0, -width / 2, height / 2],
  ],
});

export interface Scene {
  panels?: PanelInput[];
  measured?: Record<string, PanelMeasure>;
  obstacles?: ObstacleInput[];
  keepClear?: KeepClearInput[];
}

export function planOf(
  { panels = [board(600)], measured, obstacles = [], keepClear = [] }: Scene,
  speakers: SpeakerInput[],
): PlanInput {
  return {
    air: { temperatureC: 20, relativeHumidityPercent: 50, pressureKPa: 101.325 },
    cabin: { template: 'none', wheelSide: 'left', panels, ...(measured && { measured }) },
    seats: [{ id: 'chair', head: [1000, 0, 0] }],
    obstacles,
    keepClear,
    options: [{ id: 'a', speakers }],
    alignment: { sampleRateHz: 48000 },
  };
}

export function cabinOf(plan: PlanInput): CabinModel {
  const answer = buildCabin(plan);
  if (!answer.ok) throw new Error(answer.error.message);
  return answer.cabin;
}

export const placedIn = (cabin: CabinModel, speakers: readonly SpeakerInput[]) =>
  speakers.map((speaker) => {
    const place = placeSpeaker(
      speaker,
      new Map(cabin.panels.map((panel) => [panel.id, panel])),
      new Map(cabin.seats.map((seat) => [seat.id, seat])),
    );
    if (!place.ok) throw new Error(place.error.message);
    return place.placed;
  });

/** On the middle of the board, looking straight out of it. */
export const mid = (body: SpeakerBody, more: Partial<SpeakerInput> = {}): SpeakerInput => ({
  id: 'mid',
  role: 'midrange',
  side: 'left',
  mount: { panel: 'board', u: 0.5, v: 0.5 },
  body,
  ...more,
});

/** What keeps the first speaker from fitting. */
export function problems(scene: Scene, ...speakers: SpeakerInput[]): FitProblem[] {
  const plan = planOf(scene, speakers);
  const cabin = cabinOf(plan);
  const option = plan.options[0] as PlanInput['options'][number];
  const placed = placedIn(cabin, speakers);
  return fitOf({ plan, cabin, option, placed }, (speakers[0] as SpeakerInput).id);
}

export const box = (id: string, center: BoxShape['center'], size: BoxShape['size']) => ({
  id,
  shape: 'box' as const,
  center,
  size,
});

export const capsule = (
  id: string,
  from: CapsuleShape['from'],
  to: CapsuleShape['to'],
  radius: number,
) => ({
  id,
  shape: 'capsule' as const,
  from,
  to,
  radius,
});
