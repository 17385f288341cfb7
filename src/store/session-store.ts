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
  /** Draws what the panels throw back from the selected speaker. */
  showReflections: boolean;
  /** Draws the fan of where a centre-panned sound seems to come from. */
  showImage: boolean;
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
    showReflections: false,
    showImage: false,
  }));
}
