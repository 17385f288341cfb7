import { useEffect, useMemo } from 'react';
import { buildCabin } from '../../../geometry';
import { optionTitle } from '../../../plan/edits';
import { pairName } from '../../../plan/names';
import { formatLength } from '../../../plan/units';
import { sessionStore, usePlan, useSession } from '../../../store';
import { ChosenAnswer } from './chosen-answer';
import type { Found } from './found';
import { FrontChart } from './front-chart';
import { FrontTable } from './front-table';
import { countSentence, frontSentence, togetherSentence } from './outcome-words';
import { ProposalsTable } from './proposals-table';
import { chosenOf, useSearch } from './search-store';
import { spotMarks } from './spot-marks';
import { isStale } from './stale';
import { WhyNot } from './why-not';

/** What the last search found, as long as its sheet is open also in the drawing. */
export function Outcome() {
  const found = useSearch((state) => state.found);
  const said = useSearch((state) => state.said);
  const one = useSearch(chosenOf);
  const plan = usePlan((state) => state.plan);
  const unit = useSession((session) => session.lengthUnit);
  // Where the answers are is told by the cabin they were found in.
  const cabin = useMemo(() => {
    const built = found && buildCabin(found.plan);
    return built?.ok ? built.cabin : null;
  }, [found]);

  const marks = useMemo(
    () => (found && cabin ? spotMarks(found, one, cabin) : []),
    [found, cabin, one],
  );
  useEffect(() => {
    sessionStore.setState({ spotMarks: marks });
    return () => sessionStore.setState({ spotMarks: [] });
  }, [marks]);

  if (!found || !cabin) return null;
  const name = (pair: string) => pairName(pair, found.option.speakers);
  const chosen = one?.key ?? null;
  const table = { found, chosen, cabin, unit };
  const stale = isStale(found, plan);
  return (
    <section className="search-outcome" aria-label="What was found" data-stale={stale}>
      {stale && (
        <p className="notice" role="status">
          <strong>The plan has changed since; search again.</strong> These answers are of the plan
          as it was.
        </p>
      )}
      <p className="search-sentence" role="status">
        {countSentence(found, name)}
        {found.feasible === 0 && nothingAllowed(found, name)}
        {togetherSentence(found)}
        {!found.complete && ' The search for the best combination was cut short.'}
      </p>
      {said && (
        <p className="search-said" aria-hidden="true">
          {said}
        </p>
      )}
      {found.answers.length > 0 && (
        <>
          <ProposalsTable
            {...table}
            list={found.answers}
            caption="The answers, best first"
            withNow
          />
          <p className="footnote">
            {`Of the option “${optionTitle(found.option)}”. Worst over the listeners and the two sides; small: the change from now. Arrow keys choose, Enter or N takes one as a new option.`}
          </p>
        </>
      )}
      {one && <ChosenAnswer found={found} one={one} cabin={cabin} unit={unit} />}
      {found.front.length > 0 && (
        <section aria-labelledby="search-front">
          <h3 id="search-front">What is traded for what</h3>
          <p>{frontSentence(found, (mm) => formatLength(mm, unit))}</p>
          <FrontChart found={found} chosen={chosen} unit={unit} />
          <FrontTable {...table} />
        </section>
      )}
      <WhyNot found={found} />
    </section>
  );
}

const nothingAllowed = ({ pairs }: Found, name: (pair: string) => string): string => {
  const none = pairs.find(({ feasible }) => feasible === 0);
  return none && pairs.length > 1
    ? ` No spot is allowed for the ${name(none.pair)}.`
    : ' No spot is allowed.';
};
