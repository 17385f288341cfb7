/** Options compared: the only door of this folder. */
export { COVERAGE, type Uncertainties, USUAL_UNCERTAINTIES } from './causes';
export { whoIn } from './groups';
export {
  compared,
  KINDS,
  type KindInfo,
  type Measure,
  type MeasureGroup,
  type MeasureKind,
  measureOf,
  type Value,
  type Values,
  type Who,
} from './measure';
export {
  type CompareProgress,
  type MeasuredOption,
  measureInSteps,
  measureOptions,
} from './measure-option';
export { LINES } from './measure-seat';
export { IMAGE_TOLD_HZ } from './measure-stage';
export { type Misfits, misfitsOf } from './measure-whole';
export { type CompareCell, type CompareRow, compareOptions, uncertaintyOf } from './table';
export { type OptionTrials, type Trials, trialsInSteps, trialsOf } from './trials';
export { isBeyond, type Uncertainty, uncertaintyBetween } from './uncertainty';
export {
  scoreOf,
  scoreUncertainty,
  VERDICT_AIMS,
  type Verdict,
  type VerdictAim,
  type VerdictWeights,
  verdictsOf,
  weighedBy,
} from './verdict';
export { type Reason, type Reasons, type Why, whyOption } from './why';
