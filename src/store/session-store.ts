/** What the user looks at and how: not part of the plan, not undoable. */
import { createStore } from 'zustand/vanilla';

export type ViewName = 'free' | 'plan' | 'side' | 'front' | 'seat';
export type LengthUnit = 'mm' | 'in';

export type Selection =
  | { kind: 'speaker'; id: string }
  | { kind: 'seat'; id: string }
  | { kind: 'obstacle'; id: string }
  | { kind: 'panel'; id: string }
  | null;

export interface SessionState {
  /** Id of the option on the board. */
  option: string;
  /** Id of the seat whose arrivals are shown. */
  seat: string;
  selection: Selection;
  view: ViewName;
  lengthUnit: LengthUnit;
  temperatureUnit: 'C' | 'F';
  theme: 'system' | 'light' | 'dark';
  showZones: boolean;
  showOccupants: boolean;
}

export function createSessionStore() {
  return createStore<SessionState>(() => ({
    option: '',
    seat: '',
    selection: null,
    view: 'free',
    lengthUnit: 'mm',
    temperatureUnit: 'C',
    theme: 'system',
    showZones: false,
    showOccupants: true,
  }));
}
