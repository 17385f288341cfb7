/** Measured against predicted: the only door of this folder. */
export { type ArrivalReading, arrivalReadings, type ReadingSource } from './arrival-readings';
export {
  type ArrivalChoice,
  type ChosenArrival,
  type ChosenBecause,
  chooseArrival,
} from './choose-arrival';
export {
  type ArrivalComparison,
  type ArrivalDifference,
  type ComparedArrival,
  compareArrivals,
} from './compare-arrivals';
export {
  type CorrelationDelay,
  type CorrelationSettings,
  correlationDelay,
} from './correlation-delay';
export {
  ABOVE_NOISE_DB,
  BELOW_PEAK_DB,
  type EdgeArrival,
  type EdgeSettings,
  edgeArrival,
  type ImpulseResponse,
  type NoArrival,
} from './edge-arrival';
export {
  AGREE_MS,
  type ArrivalSettings,
  type FirstArrival,
  firstArrivals,
  LEAST_LIKENESS,
  type MeasuredChannel,
} from './first-arrivals';
export {
  compareMeasured,
  type DoubtParts,
  type MeasuredArrival,
  type MeasuredChannelResult,
  type MeasuredDoubts,
  type MeasuredSet,
  type MicrophonePlace,
  USUAL_DOUBTS,
} from './measured-set';
export {
  type Burst,
  type SignalChannel,
  type SignalSettings,
  type TestSignal,
  testSignal,
} from './test-signals';
export { delayed, valueAt } from './windowed-sinc';
