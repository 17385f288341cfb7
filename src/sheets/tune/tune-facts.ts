import {
  type DelayExport,
  delayExport,
  type NoDelays,
  readStepChoice,
  type StepChoice,
  startingChoice,
  whomChoices,
} from '../../exchange';
import type { TuneChoice } from '../../store/tune-choice';
import type { PaperFacts } from '../facts';

/** The step as chosen in the dialog or beside the paper. */
export const stepOf = ({ plan }: PaperFacts, { step }: TuneChoice): StepChoice =>
  step ?? startingChoice(plan.alignment.sampleRateHz);

/**
 * The tune as chosen. A step that cannot be read is said beside the paper, which then keeps to
 * whole samples of the plan's own rate. `null`: there is nobody to tune for.
 */
export function tuneOf(facts: PaperFacts, choice: TuneChoice): DelayExport | NoDelays | null {
  const whom = whomChoices(facts, choice.whom);
  if (!whom) return null;
  const speed = facts.result.speedOfSound;
  const read = readStepChoice(stepOf(facts, choice), speed);
  const rateHz = facts.plan.alignment.sampleRateHz;
  const setting = read.ok ? read : { step: { kind: 'samples' as const, rateHz } };
  const { plan, cabin, option, result } = facts;
  return delayExport({ plan, cabin, option, result }, { ...setting, for: whom.settings });
}
