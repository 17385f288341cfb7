import { PILLAR_LIMIT_DEG, PILLAR_VIEW_CAUTION, type PillarView } from '../../../geometry';
import { speakerName } from '../../../plan/names';
import { formatNumber } from '../../../plan/units';
import { type FitBoard, viewsOf } from '../../../store/fit-of-board';
import { FitSign } from '../../fit/fit-sign';
import { viewDegrees, viewSentence, viewsCompared } from '../../fit/view-words';
import { TableScroll } from '../../parts/table-scroll';
import type { Board } from '../../parts/use-board';
import { useStage } from '../../parts/use-stage';
import { useWidth } from '../../parts/use-width';
import { WorkedOut } from '../../parts/worked-out';
import { capital } from '../capital';
import './view.css';
import { ViewDrawing } from './view-drawing';

/** Wider than this a drawing says no more, CSS px. */
const WIDEST = 430;
const GAP = 16;

/** What both front pillars hide from the eyes at the wheel, without and with what stands on them. */
export default function ViewSheet({ board }: { board: Board }) {
  const stage = useStage(board);
  const [box, width] = useWidth<HTMLDivElement>(720);
  if (!stage) return <p className="quiet-text">There is no option on the board.</p>;
  const views = viewsOf(stage);
  const compared = viewsCompared(views);
  const each = Math.min(WIDEST, width < 560 ? width : (width - GAP) / 2);
  return (
    <div className="view-sheet" ref={box}>
      <ul className="view-sentences">
        {views.map((view) => (
          <li key={view.side} data-over={view.overLimit}>
            {view.overLimit && <FitSign verdict="not" wordless />} {viewSentence(view)}
          </li>
        ))}
        {compared && <li>{compared}</li>}
      </ul>
      <p className="notice view-caution">{PILLAR_VIEW_CAUTION}</p>
      <div className="view-drawings">
        {views.map(
          (view) =>
            view.lines && (
              <figure key={view.side}>
                <figcaption>
                  {capital(`${view.side} A-pillar from above`)}
                  {view.driver ? ', the wheel’s side' : ''}
                </figcaption>
                <ViewDrawing view={view} width={each} />
              </figure>
            ),
        )}
      </div>
      {views.some(({ lines }) => lines) && <Key podded={views.some(hasPods)} />}
      <ViewTable stage={stage} views={views} />
      <Construction />
    </div>
  );
}

const hasPods = ({ sections }: PillarView): boolean => (sections?.pods.length ?? 0) > 0;

function Key({ podded }: { podded: boolean }) {
  return (
    <p className="footnote">
      Whole lines: past the pillar’s outer edge and past its inner one
      {podded ? ', with the pods; dashed: without them' : ''}. The hatch behind the pillar is what
      neither eye sees. The angle is the inner line’s to the dotted parallel of the outer one. In
      the car the same lines are drawn while this sheet is open; “From the seat” shows them from the
      eyes of the seat in view.
    </p>
  );
}

function ViewTable({ stage, views }: { stage: FitBoard; views: readonly PillarView[] }) {
  const { speakers } = stage.option;
  const names = (ids: readonly string[]) =>
    speakers
      .filter(({ id }) => ids.includes(id))
      .map((speaker) => speakerName(speaker, speakers))
      .join(', ') || 'none';
  return (
    <TableScroll label="View past the pillars">
      <table className="numbers view-table">
        <caption className="unseen">What each front pillar hides, degrees</caption>
        <thead>
          <tr>
            <th scope="col" className="text">
              Pillar
            </th>
            <th scope="col">Before</th>
            <th scope="col">After</th>
            <th scope="col">Added</th>
            <th scope="col" className="text">
              {`Against ${PILLAR_LIMIT_DEG}°`}
            </th>
            <th scope="col" className="text">
              Counted
            </th>
            <th scope="col" className="text">
              No body entered
            </th>
          </tr>
        </thead>
        <tbody>
          {views.map((view) => (
            <tr key={view.side}>
              <th scope="row">{capital(view.side)}</th>
              <td>{viewDegrees(view.beforeDeg)}</td>
              <td className="strong">{viewDegrees(view.afterDeg)}</td>
              <td>{view.addedDeg === null ? formatNumber(null) : viewDegrees(view.addedDeg)}</td>
              <td className="text">
                {view.afterDeg === null ? (
                  formatNumber(null)
                ) : (
                  <>
                    <FitSign verdict={view.overLimit ? 'not' : 'fits'} wordless />{' '}
                    {view.overLimit ? 'over' : 'within'}
                  </>
                )}
              </td>
              <td className="text wrap">
                {names(view.speakers.filter((id) => !view.unknown.includes(id)))}
              </td>
              <td className="text wrap">{names(view.unknown)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </TableScroll>
  );
}

function Construction() {
  return (
    <WorkedOut>
      <p>
        Eyes 65 mm apart, each 104 mm from the point the head turns about, P1 for the pillar at the
        wheel’s side and P2 for the other one; the head turns until the line from the nearer eye
        past the pillar’s outer edge is square to the line between the eyes. Sections are taken
        where lines of sight 2° up and 5° down first meet the pillar. After UN Regulation No. 125,
        from memory: its text was not before us.
      </p>
      <p>
        A pod counts wherever it reaches between the two heights, with what stands before its panel
        alone: stricter than the regulation, which looks at the two heights only (choice of ours).
        Where a pod stands within what the pillar hides already, it adds nothing.
      </p>
      <p>
        Limits: the model’s inner pillar panel alone. The car’s own pillar, door frame, seals and
        the opaque border of the screen hide more, so the angles here are less than the car’s.
      </p>
    </WorkedOut>
  );
}
