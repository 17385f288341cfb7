/** Files out and in, as text: no DOM, so page and Node share it. */
export { CAUTIONS, type Caution, cautionsFor, SHORT_CAUTION } from './cautions';
export { type ReadDelay, type ReadDelays, readDelaysCsv, toCsv } from './delay-csv';
export {
  type DelayAmounts,
  type DelayExport,
  type DelayExportSettings,
  type DelayRow,
  delayExport,
} from './delay-export';
export { readDelaysJson, toJson } from './delay-json';
export { checkDelayStep, type DelayStep, stepDuration, stepName } from './delay-step';
export { toText } from './delay-text';
