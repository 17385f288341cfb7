export { DimensionField, type DimensionFieldProps } from './dimension-field';
export { DimensionsPanel } from './dimensions-panel';
export { TapeNote } from './drawing/tape-note';
