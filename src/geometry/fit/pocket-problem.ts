import type { Panel } from '../cabin/model';
import type { OptionInput, SealedPocket } from '../input';
import { planPocket, speakersIn } from './plan-pocket';
import { type FitProblem, litres, nameOf } from './problem';

/** Less than this is rounding, litres. */
const SLACK = 1e-9;

/**
 * Whether a pocket holds the airspace its speakers want, their own bodies being taken off already;
 * or why it holds none. `null`: nothing is wrong.
 */
export function pocketProblem({
  panel,
  option,
  pocket,
}: {
  panel: Panel;
  option: Pick<OptionInput, 'speakers'>;
  pocket: SealedPocket;
}): FitProblem | null {
  const at = `${pocket.lies === 'before' ? 'before' : 'behind'} ${nameOf(panel)}`;
  const answer = planPocket({ cabin: { panels: [panel] }, option }, pocket);
  const problem = (by: number | null, sentence: string): FitProblem => ({
    kind: 'airspace',
    sentence,
    by,
    with: panel.id,
    hard: false,
  });
  if (!answer.ok) return problem(null, `the pocket ${at} holds no air: ${answer.message}`);
  const wanted = speakersIn(option, pocket).reduce(
    (sum, { body }) => sum + (body?.airspaceLitres ?? 0),
    0,
  );
  const { netLitres } = answer.pocket;
  const short = wanted - netLitres;
  if (short <= SLACK) return null;
  return problem(
    short,
    `${litres(short)} too little airspace in the pocket ${at}: ` +
      `${litres(wanted)} wanted, ${litres(netLitres)} net`,
  );
}
