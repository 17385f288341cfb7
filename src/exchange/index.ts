/** Files out and in, as text: no DOM, so page and Node share it. */
export { CAUTIONS, type Caution, cautionsFor, SHORT_CAUTION } from './cautions';
export { type ChannelFilter, type ChannelFilters, filterWords } from './channel-filters';
export { toCsv } from './delay-csv';
export { delayExport } from './delay-export';
export { readDelaysJson, toJson } from './delay-json';
export {
  checkDelayStep,
  type DelayStep,
  type LengthUnit,
  largestInMs,
  lengthStep,
  stepDuration,
  stepName,
} from './delay-step';
export { toText } from './delay-text';
export type {
  DelayAmounts,
  DelayExport,
  DelayExportSettings,
  DelayRow,
  ExportedFor,
  ExportedSeat,
  ExportedStage,
  NoDelays,
  SeatLine,
} from './delay-types';
export { allAlike, exportedFor } from './delays-wanted';
export { type ImpulseAnswer, type ReadImpulse, readImpulseText } from './impulse-text';
export {
  type FragmentAnswer,
  holdsPlan,
  LONGEST_LINK,
  type PlanLink,
  planOfFragment,
  planToFragment,
} from './plan-link';
export { type ReadDelay, type ReadDelays, readDelaysCsv } from './read-delays-csv';
export {
  type ReadChannel,
  type ReadFilter,
  type ReadTune,
  readTuneCsv,
  readTuneJson,
} from './read-tune';
export { readTuneText } from './read-tune-text';
export {
  COMMON_RATES_HZ,
  type ReadStep,
  readStepChoice,
  type StepChoice,
  type StepKind,
  startingChoice,
} from './step-choice';
export {
  type SignalFile,
  type SignalFiles,
  type SignalFilesSettings,
  testSignalFiles,
  zipInSteps,
  zipOf,
} from './test-signals/signal-files';
export type { Sound, WavEncoding } from './wav/format';
export { looksLikeWav, type ReadWav, readWav, type WavAnswer } from './wav/read-wav';
export { type WrittenEncoding, writeWav } from './wav/write-wav';
export { type WhomChoices, whomChoices } from './whom-choices';
