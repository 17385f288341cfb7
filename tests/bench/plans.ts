/** The plans that are timed. */

import type { Role, Side, SpeakerInput } from '../../src/geometry';
import type { Plan, PlanOption } from '../../src/plan/types';

const SPOTS: readonly (readonly [Role, string, number, number])[] = [
  ['tweeter', 'pillar', 0.5, 0.3],
  ['tweeter', 'mirror-corner', 0.5, 0.5],
  ['midrange', 'dash-top', 0.6, 0.3],
  ['midrange', 'door-upper', 0.25, 0.5],
  ['midbass', 'door-lower', 0.3, 0.4],
  ['midbass', 'kick', 0.5, 0.5],
];

/**
 * An option of `count` speakers (even) on the panels installers use, aimed at the driver's seat.
 * @param shift moves every spot by this much along u, so that nothing is known from before
 */
export function crowdedOption(count: number, shift = 0): PlanOption {
  const speakers = Array.from({ length: count }, (_, i): SpeakerInput => {
    const pair = Math.floor(i / 2);
    const side: Side = i % 2 ? 'right' : 'left';
    const [role, panel, u, v] = SPOTS[pair % SPOTS.length] as (typeof SPOTS)[number];
    const lap = Math.floor(pair / SPOTS.length);
    return {
      id: `${role}-${pair}-${side}`,
      role,
      pair: `${role}-${pair}`,
      side,
      mount: { panel: `${panel}-${side}`, u: (u + 0.07 * lap + shift) % 1, v, standoff: 10 },
      aim: { kind: 'seat', seat: 'front-left' },
      diaphragm: 60,
      bandHz: [300, 5000],
    };
  });
  return { id: 'a', title: 'Crowded', speakers };
}

/** A template cabin with its two front seats and `count` speakers. */
export function crowdedPlan(count = 12, template = 'estate'): Plan {
  return {
    format: 'earpath-plan',
    version: 1,
    title: 'Bench',
    air: { temperatureC: 20, relativeHumidityPercent: 50, pressureKPa: 101.325 },
    cabin: { template, wheelSide: 'left' },
    seats: [{ id: 'front-left' }, { id: 'front-right' }],
    options: [crowdedOption(count)],
    alignment: { seat: 'front-left', sampleRateHz: 48000 },
  };
}

/** The plan with a bumpy sheet of about `triangles` triangles above the roof, in nobody's way. */
export function withScan(plan: Plan, triangles: number): Plan {
  const n = Math.max(1, Math.round(Math.sqrt(triangles / 2)));
  const vertices = Array.from({ length: (n + 1) ** 2 }, (_, k) => {
    const [i, j] = [k % (n + 1), Math.floor(k / (n + 1))];
    return [(3000 * i) / n, -800 + (1600 * j) / n, 2600 + 40 * Math.sin(i) * Math.cos(j)] as const;
  });
  const cells = Array.from({ length: n * n }, (_, k) => {
    const at = (k % n) + Math.floor(k / n) * (n + 1);
    return [
      [at, at + 1, at + n + 1],
      [at + 1, at + n + 2, at + n + 1],
    ] as const;
  });
  const scan = { id: 'scan', shape: 'mesh' as const, vertices, triangles: cells.flat() };
  return { ...plan, obstacles: [scan] };
}
