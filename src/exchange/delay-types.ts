/** What an export of delays holds: plain data, the same for page, CSV, JSON and text. */
import type {
  CrossoverInput,
  Line,
  OptionResult,
  PlanInput,
  Role,
  SeatWeight,
  Side,
  Stage,
} from '../geometry';
import type { Caution } from './cautions';
import type { ChannelFilters } from './channel-filters';
import type { DelayStep } from './delay-step';

/** Whom the delays serve: one seat, or the best compromise over several. */
export type ExportedFor =
  | { by: 'seat'; seat: string }
  | { by: 'seats'; seats: readonly SeatWeight[] };

/** What to export. */
export interface DelayExportSettings {
  for: ExportedFor;
  /** What the processor's delays can be set in. */
  step: DelayStep;
  /** The largest delay the processor holds, ms; left out: no limit. */
  largestMs?: number;
}

/** The option with its answer, and the title of its plan. */
export type ExportedStage = Stage & { plan: PlanInput & { title?: string } };

/** One length of time in every unit a processor may ask for. */
export interface DelayAmounts {
  ms: number;
  samples: number;
  mm: number;
  cm: number;
  inches: number;
}

/** What lies between one speaker and one seat the delays serve. */
export interface SeatLine {
  seat: string;
  /** The straight line, mm. */
  straight: number;
  /** What the sound travels, mm: the straight line, or the way round where that is blocked. */
  path: number;
  line: Line;
  /** Ids. */
  blockedBy: readonly string[];
  /** Of a grazing line, the nearest first. */
  grazedBy: readonly string[];
  /** What the way bends round. */
  round: readonly string[];
  /** path − straight, mm; `null` where blocked and no way round is known, and where clear. */
  detour: number | null;
  /** The line in words: "free", "blocked by the wheel; the path goes round the wheel, +12.3 mm". */
  words: string;
  /**
   * How late this speaker arrives with the delays as set, against the middle of all at this seat,
   * ms.
   */
  errorMs: number;
}

/** A keep-clear zone a speaker reaches into. */
export interface ReachedZone {
  id: string;
  name: string;
  reason: string;
  caution: string;
}

/** One channel of the processor. */
export interface DelayRow extends ChannelFilters {
  speaker: string;
  /** In words: "left tweeter". */
  name: string;
  role: Role;
  pair: string | null;
  side: Side | null;
  /** One for each seat the delays serve, in their order. */
  lines: SeatLine[];
  delay: DelayAmounts;
  /** The delay at whole steps, and how many. */
  rounded: DelayAmounts & { steps: number };
  /** What rounding leaves: rounded − wanted. */
  residual: { ms: number; mm: number };
  gainDb: number;
  /** True where the processor's largest delay is in the way. */
  clamped: boolean;
  /** True where the channel's poles are swapped. */
  inverted: boolean;
  /** Whether the plan says so, or it is as is usual for the crossovers. */
  polarityFrom: 'plan' | 'crossovers';
  keepClear: ReachedZone[];
}

/** A seat the delays serve. */
export interface ExportedSeat {
  id: string;
  /** In words: "front left seat". */
  name: string;
  /** How much it counts among several; `null` for the only one. */
  weight: number | null;
  /** What the delays wanted leave any speaker here, ms; two speakers may be twice this apart. */
  largestErrorMs: number;
  /** The same with the delays as set. */
  largestErrorSetMs: number;
}

/** Where one pair hands over to another, as far as the poles were reckoned by it. */
export interface ExportedCrossover extends CrossoverInput {
  /** In words: "mids to tweeters". */
  name: string;
  /** True where the plan lists none and this one was proposed from the bands. */
  proposed: boolean;
}

export interface DelayExport {
  planTitle: string;
  option: { id: string; title: string };
  by: 'seat' | 'seats';
  seats: ExportedSeat[];
  detail: OptionResult['detail'];
  /** mm/ms. */
  speedOfSound: number;
  temperatureC: number;
  step: DelayStep;
  stepName: string;
  /** The rate samples are counted at, Hz. */
  sampleRateHz: number;
  largestMs: number | null;
  /** The longest delay wanted of any channel: what the processor has to hold. */
  longest: DelayAmounts;
  /** Every delay can be set: none is clamped. */
  fits: boolean;
  rows: DelayRow[];
  crossovers: ExportedCrossover[];
  /** What to know about these numbers in particular: clamped rows, blocked lines. */
  notes: string[];
  /** Which speaker reaches into which keep-clear zone, one sentence each. */
  keepClear: string[];
  shortCaution: string;
  cautions: readonly Caution[];
}

/** Why there are no delays, in one sentence. */
export interface NoDelays {
  problem: string;
}
