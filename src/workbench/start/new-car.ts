import { produce } from 'immer';
import { DEFAULT_SAMPLE_RATE_HZ, getTemplate, type Role, type Side } from '../../geometry';
import { ROLE_HABITS } from '../../plan/bodies';
import { addPair } from '../../plan/edits';
import type { Plan } from '../../plan/types';

/** What is asked before a plan begins. */
export interface NewCar {
  template: string;
  wheelSide: Side;
  title: string;
  /** What has been measured so far, mm or degrees. */
  dimensions: Readonly<Record<string, number>>;
}

/** The plan a new car begins with: one option, nothing in it yet. */
export function planOf({ template, wheelSide, title, dimensions }: NewCar): Plan {
  return {
    format: 'earpath-plan',
    version: 1,
    title: title.trim() || (getTemplate(template)?.name ?? 'New car'),
    // Standard air; the temperature is set where the delays are.
    air: { temperatureC: 20, relativeHumidityPercent: 50, pressureKPa: 101.325 },
    cabin: {
      template,
      wheelSide,
      ...(Object.keys(dimensions).length > 0 && { dimensions }),
    },
    seats: [],
    options: [{ id: 'a', title: 'First option', speakers: [] }],
    alignment: {
      seat: wheelSide === 'left' ? 'front-left' : 'front-right',
      sampleRateHz: DEFAULT_SAMPLE_RATE_HZ,
    },
  };
}

const THREE_WAY: readonly Role[] = ['tweeter', 'midrange', 'midbass'];

/**
 * The plan with a three-way front stage at the usual spots: what the dimensions are tried on
 * before the user has placed anything.
 */
export const withReferenceStage = (plan: Plan): Plan =>
  produce(plan, (draft) => {
    for (const role of THREE_WAY) addPair('a', role, ROLE_HABITS[role].sizes[0] ?? 25)(draft);
  });
