/** A small plan without a template: nothing in it hangs on what a body style measures. */
import type { Plan } from '../../src/plan/types';

export function smallPlan(title = 'Small plan'): Plan {
  return {
    format: 'earpath-plan',
    version: 1,
    title,
    air: { temperatureC: 20, relativeHumidityPercent: 50, pressureKPa: 101.325 },
    cabin: {
      template: 'none',
      wheelSide: 'left',
      panels: [
        {
          id: 'board-left',
          corners: [
            [0, -700, 0],
            [0, -100, 0],
            [0, -100, 800],
            [0, -700, 800],
          ],
        },
        {
          id: 'board-right',
          corners: [
            [0, 700, 0],
            [0, 100, 0],
            [0, 100, 800],
            [0, 700, 800],
          ],
        },
      ],
    },
    seats: [
      { id: 'front-left', head: [1400, -360, 900] },
      { id: 'front-right', head: [1400, 360, 900] },
    ],
    options: [
      {
        id: 'a',
        title: 'First',
        speakers: [
          {
            id: 'midrange-left',
            role: 'midrange',
            pair: 'midrange',
            side: 'left',
            mount: { panel: 'board-left', u: 0.3, v: 0.6, standoff: 10 },
          },
          {
            id: 'midrange-right',
            role: 'midrange',
            pair: 'midrange',
            side: 'right',
            mount: { panel: 'board-right', u: 0.3, v: 0.6, standoff: 10 },
          },
          { id: 'subwoofer', role: 'subwoofer', position: [2000, 0, 200] },
        ],
      },
    ],
    alignment: { seat: 'front-left', sampleRateHz: 48000 },
  };
}
