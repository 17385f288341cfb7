import { type ComponentType, lazy } from 'react';
import type { Board } from '../parts/use-board';
import { ArrivalsTable } from './arrivals-table';
import { DelaysTable } from './delays-table';
import { PairsTable } from './pairs-table';
import { StripChart } from './strip-chart';

export interface Sheet {
  id: string;
  title: string;
  group: string;
  Body: ComponentType<{ board: Board }>;
  /** Holds more than a short table, and is given more of the page. */
  roomy?: true;
}

/** The numbers of the option as it stands, and what helps to decide where everything goes. */
const HEARD = 'Heard';
const DECIDE = 'Decide';
/** What is made and carried into the car. */
const BUILD = 'Build';

/** Every set of numbers. What is heavier than a table comes with its study when it is asked for. */
export const SHEETS: readonly Sheet[] = [
  { id: 'strip', group: HEARD, title: 'Times', Body: StripChart },
  { id: 'arrivals', group: HEARD, title: 'Arrivals', Body: ArrivalsTable },
  { id: 'pairs', group: HEARD, title: 'Pairs', Body: PairsTable },
  { id: 'delays', group: HEARD, title: 'Delays', Body: DelaysTable },
  roomy('reflections', HEARD, 'Reflections', () => import('./reflections')),
  roomy('levels', HEARD, 'Levels', () => import('./levels')),
  roomy('crossings', HEARD, 'Crossovers', () => import('./crossings')),
  roomy('image', HEARD, 'Image', () => import('./image')),
  roomy('seats', HEARD, 'Seats', () => import('./seats')),
  roomy('slow', HEARD, 'Slow motion', () => import('./slow')),
  roomy('matters', DECIDE, 'What matters', () => import('./matters')),
  roomy('fit', DECIDE, 'Fit', () => import('./fit')),
  roomy('view', DECIDE, 'View', () => import('./view')),
  roomy('pockets', DECIDE, 'Pockets', () => import('./pockets')),
  roomy('map', DECIDE, 'Map', () => import('./map')),
  roomy('search', DECIDE, 'Best spots', () => import('./search')),
  roomy('compare', DECIDE, 'Compare', () => import('./compare')),
  roomy('stage', DECIDE, 'Whole stage', () => import('./stage')),
  roomy('ring', BUILD, 'Ring', () => import('./ring')),
  roomy('measured', BUILD, 'Measured', () => import('./measured')),
];

type SheetModule = { default: ComponentType<{ board: Board }> };

function roomy(id: string, group: string, title: string, load: () => Promise<SheetModule>): Sheet {
  return { id, group, title, Body: lazy(load), roomy: true };
}
