import type { FitProblem, Panel, SpeakerInput } from '../../geometry';
import { useGestureRunning, useSession } from '../../store';
import { problemsOf, viewsOf } from '../../store/fit-of-board';
import { openSheet } from '../answers/open-sheet';
import { withArticle } from '../parts/names';
import type { Board } from '../parts/use-board';
import { useStage } from '../parts/use-stage';
import './fit.css';
import { FitSign } from './fit-sign';
import { fitSentences, fitUnknowns, verdictOf, worstFirst } from './fit-words';
import { PanelMeasures } from './panel-measures';
import { viewSentence } from './view-words';

/** Does the selected speaker fit where it stands: sentences worst first, and what is not known. */
export default function FitNote({ board, speaker }: { board: Board; speaker: SpeakerInput }) {
  const stage = useStage(board);
  const unit = useSession((session) => session.lengthUnit);
  const running = useGestureRunning();
  if (!stage) return null;
  // The speaker as it was worked out, which in a drag is the one the numbers belong to.
  const shown = stage.option.speakers.find(({ id }) => id === speaker.id) ?? speaker;
  const problems = problemsOf(stage, shown.id);
  const verdict = verdictOf(shown, problems);
  const panel = stage.cabin.panels.find(({ id }) => id === shown.mount?.panel) ?? null;
  const worst = worstFirst(problems);
  const inPocket = stage.option.pockets?.some(
    (pocket) => pocket.panel === panel?.id && pocket.speakers.includes(shown.id),
  );
  const unknowns = fitUnknowns(shown, panel, unit, inPocket);
  return (
    <section className="fit-note" aria-labelledby="fit-note-head">
      <h3 id="fit-note-head">Does it fit?</h3>
      <div aria-live={running ? 'off' : 'polite'}>
        {problems.length > 0 ? (
          <ul className="fit-problems">
            {fitSentences(problems, unit, stage.option.speakers).map((sentence, i) => (
              <li key={sentence} className={worst[i]?.hard ? 'fit-hard' : undefined}>
                <FitSign verdict={worst[i]?.hard ? 'zone' : 'not'} wordless />
                <span>{sentence}</span>
              </li>
            ))}
          </ul>
        ) : (
          <p className="fit-verdict">
            <FitSign verdict={verdict} wordless />{' '}
            {verdict === 'unknown'
              ? 'Not known: nothing is in the way of its middle.'
              : 'Fits, as far as the model knows.'}
          </p>
        )}
      </div>
      {worst.some(runsIntoBy) && (
        <p className="fit-unknowns">
          Into another thing: how far it would have to move along its own axis to stand free.
        </p>
      )}
      {unknowns.length > 0 && (
        <ul className="fit-unknowns">
          {unknowns.map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      )}
      {panel?.mountable && <MeasureIt panel={panel} />}
      <PastThePillar panel={panel} views={panel ? viewsOf(stage) : []} />
    </section>
  );
}

const runsIntoBy = ({ kind, by }: FitProblem): boolean =>
  by !== null && (kind === 'obstacle' || kind === 'speaker' || kind === 'zone');

function MeasureIt({ panel }: { panel: Panel }) {
  return (
    <details className="fit-measure">
      <summary>{`Measured it? Enter the depth behind ${withArticle(panel.name)}`}</summary>
      <PanelMeasures panel={panel} />
    </details>
  );
}

interface PastThePillarProps {
  panel: Panel | null;
  views: ReturnType<typeof viewsOf>;
}

/** For a speaker on a front pillar: what that hides. */
function PastThePillar({ panel, views }: PastThePillarProps) {
  const view = views.find((one) => one.panel === panel?.id);
  if (!view) return null;
  return (
    <p className="fit-view">
      {viewSentence(view)}{' '}
      <button type="button" className="words" onClick={() => openSheet('view')}>
        Show the view past the pillar
      </button>
    </p>
  );
}
