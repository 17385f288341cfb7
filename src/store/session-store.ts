/** What the user looks at and how: not part of the plan, not undoable. */
import { createStore } from 'zustand/vanilla';
import type { MapQuantity, SpotMap, Vec3 } from '../geometry';

export type ViewName = 'free' | 'plan' | 'side' | 'front' | 'seat';
export type LengthUnit = 'mm' | 'in';

export type Selection =
  | { kind: 'speaker'; id: string }
  | { kind: 'seat'; id: string }
  | { kind: 'obstacle'; id: string }
  | { kind: 'panel'; id: string }
  | null;

/** What the page has worked out about places for speakers, drawn on the panels. */
export interface PaintedMap {
  /** Grows while it is being worked out; a new object for each step. */
  map: SpotMap;
  quantity: MapQuantity;
  /** Values at the two ends of the colours, and where lines of equal value run. */
  range: readonly [number, number];
  levels: readonly number[];
  /** The spot pointed at, by number in the map; `null`: none. */
  at: number | null;
  /** It was clicked, tapped or reached by keys, and stays when the pointer goes on. */
  held: boolean;
}

/** A place shown in the drawing without a speaker standing there yet. */
export interface SpotMark {
  position: Vec3;
  normal: Vec3;
  /** "1L", "2R". */
  label: string;
  chosen: boolean;
}

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
  /** Id of the open sheet of numbers. */
  sheet: string;
  painted: PaintedMap | null;
  spotMarks: readonly SpotMark[];
  /** Id of an option drawn beside the one on the board, never that one itself. */
  beside: string | null;
  /** Draws what the front pillars hide from the eyes at the wheel. */
  showPillarView: boolean;
  /** Draws the sealed pockets of the option on the board. */
  showPockets: boolean;
  /** The browser cannot draw in 3D, so the car is drawn flat, from above. */
  flat: boolean;
  /** Id of the paper looked at in the place of the board; `null`: the board stands. */
  paper: string | null;
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
    sheet: 'strip',
    painted: null,
    spotMarks: [],
    beside: null,
    showPillarView: false,
    showPockets: false,
    flat: false,
    paper: null,
  }));
}

export type SessionStore = ReturnType<typeof createSessionStore>;
