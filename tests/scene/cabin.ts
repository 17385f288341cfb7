/** A small made-up cabin for the scene's tests: two panels meeting at a right angle, and a seat. */
import { type CabinModel, evaluatePlan, type Panel } from '../../src/geometry';
import type { Plan } from '../../src/plan/types';

/** A dash top 400 deep and 1200 wide at Z = 700, and a wall to its left, 600 high above it. */
export const boardPlan = (): Plan => ({
  format: 'earpath-plan',
  version: 1,
  title: 'Test bench',
  air: { temperatureC: 20, relativeHumidityPercent: 50, pressureKPa: 101.325 },
  cabin: {
    template: 'none',
    wheelSide: 'left',
    panels: [
      {
        id: 'shelf',
        corners: [
          [0, -600, 700],
          [400, -600, 700],
          [400, 600, 700],
          [0, 600, 700],
        ],
      },
      {
        id: 'wall-left',
        corners: [
          [0, -600, 700],
          [400, -600, 700],
          [400, -600, 1300],
          [0, -600, 1300],
        ],
      },
      {
        id: 'glass',
        mountable: false,
        corners: [
          [0, -600, 700],
          [0, 600, 700],
          [0, 600, 1300],
          [0, -600, 1300],
        ],
      },
    ],
  },
  seats: [{ id: 'front-left', head: [1000, -350, 1000] }],
  obstacles: [{ id: 'box', shape: 'box', center: [700, 200, 400], size: [200, 200, 200] }],
  options: [
    {
      id: 'a',
      title: 'A',
      speakers: [
        {
          id: 's',
          role: 'tweeter',
          mount: { panel: 'shelf', u: 0.5, v: 0.5, standoff: 12 },
        },
        {
          id: 'free',
          role: 'midrange',
          position: [200, 300, 800],
          aim: { kind: 'seat', seat: 'front-left' },
        },
      ],
    },
  ],
  alignment: { sampleRateHz: 48000 },
});

export function cabinOf(plan: Plan): CabinModel {
  const answer = evaluatePlan(plan);
  if (!answer.ok) throw new Error(`${answer.error.path}: ${answer.error.message}`);
  return answer.cabin;
}

export function panelOf(cabin: CabinModel, id: string): Panel {
  const panel = cabin.panels.find((one) => one.id === id);
  if (!panel) throw new Error(`the cabin has no panel "${id}"`);
  return panel;
}
