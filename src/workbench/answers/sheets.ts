import { type ComponentType, lazy } from 'react';
import type { Board } from '../parts/use-board';
import { ArrivalsTable } from './arrivals-table';
import { DelaysTable } from './delays-table';
import { PairsTable } from './pairs-table';
import { StripChart } from './strip-chart';

export type SheetId =
  | 'strip'
  | 'arrivals'
  | 'pairs'
  | 'delays'
  | 'reflections'
  | 'levels'
  | 'crossings'
  | 'image'
  | 'seats'
  | 'matters';

export interface Sheet {
  id: SheetId;
  title: string;
  Body: ComponentType<{ board: Board }>;
  /** Holds more than a short table, and is given more of the page. */
  roomy?: true;
}

/** Every set of numbers. What is heavier than a table comes with its study when it is asked for. */
export const SHEETS: readonly Sheet[] = [
  { id: 'strip', title: 'Times', Body: StripChart },
  { id: 'arrivals', title: 'Arrivals', Body: ArrivalsTable },
  { id: 'pairs', title: 'Pairs', Body: PairsTable },
  { id: 'delays', title: 'Delays', Body: DelaysTable },
  {
    id: 'reflections',
    title: 'Reflections',
    Body: lazy(() => import('./reflections')),
    roomy: true,
  },
  { id: 'levels', title: 'Levels', Body: lazy(() => import('./levels')), roomy: true },
  { id: 'crossings', title: 'Crossovers', Body: lazy(() => import('./crossings')), roomy: true },
  { id: 'image', title: 'Image', Body: lazy(() => import('./image')), roomy: true },
  { id: 'seats', title: 'Seats', Body: lazy(() => import('./seats')), roomy: true },
  { id: 'matters', title: 'What matters', Body: lazy(() => import('./matters')), roomy: true },
];
