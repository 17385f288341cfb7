/** The arrival of sound as a strip of pictures: one drawing for the page, for paper and for files. */
export { weightOf } from './pens';
export { pathOf } from './picture';
export { type StripDrawing, type StripRow, type StripWords, stripDrawing } from './strip';
export { type SvgNode, svgText } from './svg-node';
export { isReached, type WaveStage, type WaveState, waveStates } from './wave-state';
