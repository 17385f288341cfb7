import { SHORT_CAUTION } from '../../../exchange/cautions';
import { zoneName } from '../../../exchange/keep-clear/spot-zones';
import { NO_ZONE_KNOWN, ZONES_CAUTION } from '../../../exchange/keep-clear/zone-cautions';
import { FLANGE_LIFT, type SpeakerInput } from '../../../geometry';
import { useSession } from '../../../store';
import { type FitBoard, problemsOf } from '../../../store/fit-of-board';
import { FitSign } from '../../fit/fit-sign';
import { asSentence, inUnit, problemWords, verdictOf, worstFirst } from '../../fit/fit-words';
import { TableScroll } from '../../parts/table-scroll';
import type { Board } from '../../parts/use-board';
import { useStage } from '../../parts/use-stage';
import { WorkedOut } from '../../parts/worked-out';
import { capital } from '../capital';
import { groupsOf } from '../groups';
import { SpeakerHead, SpeakerRow } from '../speaker-button';
import './fit-sheet.css';

/** Every speaker of the option by pair: does it fit, and what is in its way. Follows a drag. */
export default function FitSheet({ board }: { board: Board }) {
  const stage = useStage(board);
  if (!stage) return <p className="quiet-text">There is no option on the board.</p>;
  const { speakers } = stage.option;
  if (speakers.length === 0)
    return <p className="quiet-text">No speaker stands in this option yet. Add a pair first.</p>;
  return (
    <div className="fit-sheet">
      <TableScroll label="Does it fit">
        <table className="numbers fit-table">
          <caption className="unseen">Which speakers fit where they stand</caption>
          <thead>
            <tr>
              <th scope="col" className="text">
                Speaker
              </th>
              <th scope="col" className="text">
                Fits
              </th>
              <th scope="col" className="text">
                What does not
              </th>
              <th scope="col" className="text">
                Keep-clear zones
              </th>
            </tr>
          </thead>
          {groupsOf(speakers).map(({ id, members }) => (
            <tbody key={id}>
              {members.map((speaker) => (
                <FitRow key={speaker.id} stage={stage} speaker={speaker} />
              ))}
            </tbody>
          ))}
        </table>
      </TableScroll>
      <p className="footnote">
        Keep-clear zones are those of a usual car of this body style and those of the plan,{' '}
        {ZONES_CAUTION} {SHORT_CAUTION}
      </p>
      <Limits />
    </div>
  );
}

function FitRow({ stage, speaker }: { stage: FitBoard; speaker: SpeakerInput }) {
  const unit = useSession((session) => session.lengthUnit);
  const problems = problemsOf(stage, speaker.id);
  const verdict = verdictOf(speaker, problems);
  const others = worstFirst(problems).filter(({ hard }) => !hard);
  const zones = worstFirst(problems).filter(({ hard }) => hard);
  const nameOf = (id: string | undefined) => {
    const zone = stage.cabin.keepClear.find((one) => one.id === id);
    return zone ? zoneName(zone) : (id ?? '');
  };
  return (
    <SpeakerRow id={speaker.id}>
      <SpeakerHead speaker={speaker} among={stage.option.speakers} />
      <td className="text">
        <FitSign verdict={verdict} />
      </td>
      <td className="text wrap">
        {others.length > 0 ? (
          <ul>
            {others.map((problem) => (
              <li key={problem.sentence}>
                {asSentence(problemWords(problem, unit, stage.option.speakers))}
              </li>
            ))}
          </ul>
        ) : (
          <span className="dim">
            {verdict === 'unknown' ? 'No body is entered.' : 'Nothing the model knows of.'}
          </span>
        )}
      </td>
      <td className="text wrap">
        {zones.length > 0 ? (
          <ul>
            {zones.map(({ with: id, by, sentence }) => (
              <li key={sentence}>
                <strong>{capital(nameOf(id))}</strong>
                {by !== null && `: ${inUnit(sentence, unit).split(' into ')[0]}`}
              </li>
            ))}
          </ul>
        ) : (
          <span className="dim">{capital(NO_ZONE_KNOWN.split(';')[0] ?? '')}</span>
        )}
      </td>
    </SpeakerRow>
  );
}

function Limits() {
  return (
    <WorkedOut>
      <p>
        A speaker is a flange disc with a cylinder of its cut-out’s diameter behind it, along its
        own axis; no basket, no terminals, no pod. Its panel has to hold the flange within its
        outline, with no more than {FLANGE_LIFT} mm of curvature under it (what a gasket takes up:
        choice of ours), the cut-out, the depth and the airspace behind. The outline goes on in the
        next panel where both edges meet level, within 3°, and are of one material.
      </p>
      <p>
        Against other speakers, obstacles and zones the whole body is tried, exactly, seats over all
        of their travel. The millimetres are how far it would have to move along its own axis to
        stand free. Depths and airspaces are the usual ones until they are measured.
      </p>
      <p>
        Limits: a model, not a survey. Wiring, brackets, glass and beams behind the trim are not in
        it, and an empty list is no leave to cut.
      </p>
    </WorkedOut>
  );
}
