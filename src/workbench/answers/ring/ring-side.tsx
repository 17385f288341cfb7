import { useState } from 'react';
import {
  backLift,
  depthBehind,
  FLANGE_LIFT,
  type SpeakerInput,
  type Stage,
} from '../../../geometry';
import { mountSpeaker } from '../../../plan/edits';
import { formatLength, formatNumber, type LengthUnit } from '../../../plan/units';
import { planStore } from '../../../store';
import { problemsOf } from '../../../store/fit-of-board';
import { FitSign } from '../../fit/fit-sign';
import { fitSentences, worstFirst } from '../../fit/fit-words';
import { sentence } from '../../parts/check-number';
import { SideMark } from '../../parts/marks';
import { withArticle } from '../../parts/names';
import { capital } from '../capital';
import { type StandingRing, standoffFor } from './ring-board';
import { boardWords, flangeWords, ringMeasures, steepWords, thickWords } from './ring-words';
import { saveStl } from './save-rings';
import { SectionDrawing } from './section-drawing';

export interface RingSideProps {
  stage: Stage;
  ring: StandingRing;
  /** Speakers whose stand-off is one: this one and its tied twin. */
  together: readonly SpeakerInput[];
  name: string;
  unit: LengthUnit;
  width: number;
  locked: boolean;
}

/** One ring: how steep, whether it fits, its section with measures, its file. */
export function RingSide(props: RingSideProps) {
  const { stage, ring, together, name, unit, width, locked } = props;
  const { speaker, panel, answer } = ring;
  const problems = problemsOf(stage, speaker.id);
  const worst = worstFirst(problems);
  return (
    <section className="ring-side" aria-label={`Ring of the ${name}`}>
      <h3>
        <SideMark side={speaker.side} />
        {`${capital(name)} on ${withArticle(panel.name)}`}
      </h3>
      <div aria-live="polite">
        {problems.length > 0 ? (
          <ul className="ring-problems">
            {fitSentences(problems, unit, stage.option.speakers).map((text, i) => (
              <li key={text} className={worst[i]?.hard ? 'fit-hard' : undefined}>
                <FitSign verdict={worst[i]?.hard ? 'zone' : 'not'} wordless />
                <span>{text}</span>
              </li>
            ))}
          </ul>
        ) : (
          <p>
            <FitSign verdict="fits" wordless /> Speaker and ring fit, as far as the model knows.
          </p>
        )}
      </div>
      {!answer.ok && answer.standoffNeeded !== null && (
        <MoreStandoff {...{ stage, speaker, together, unit, locked }} />
      )}
      {answer.ok && <Made ring={ring} form={answer.ring} {...{ name, unit, width }} />}
    </section>
  );
}

interface MadeProps {
  ring: StandingRing;
  form: Extract<StandingRing['answer'], { ok: true }>['ring'];
  name: string;
  unit: LengthUnit;
  width: number;
}

function Made({ ring, form, name, unit, width }: MadeProps) {
  const [said, setSaid] = useState('');
  const { input, place, panel, placed, speaker } = ring;
  const behind = depthBehind(speaker, placed, panel) ?? 0;
  const lift = backLift(panel, speaker, input, form);
  const told = [
    steepWords(form),
    flangeWords(input, speaker.body?.flange ?? 0, unit),
    thickWords(form, place),
  ].filter((text) => text !== null);
  if (lift > FLANGE_LIFT)
    told.push(
      `The panel is curved there: the ring’s flat back lifts up to ${formatLength(lift, unit, unit === 'mm' ? 1 : 2)} off it. ` +
        'Scribe it to the panel, or fill under it.',
    );
  const save = async () => {
    const outcome = await saveStl(planStore.getState().plan.title, {
      title: name,
      mesh: form.mesh,
    });
    setSaid(
      outcome.kind === 'saved'
        ? 'Saved.'
        : outcome.kind === 'failed'
          ? sentence(`the file could not be written: ${outcome.why}`)
          : '',
    );
  };
  return (
    <>
      <dl className="ring-facts">
        <div>
          <dt>wedge</dt>
          <dd>{form.thickSide ? `${formatNumber(form.wedgeDeg, 1)}°` : 'none'}</dd>
        </div>
        <div>
          <dt>thickness</dt>
          <dd>
            {form.thickSide
              ? `${formatLength(form.sections.thinOuter, unit, unit === 'mm' ? 1 : 2)} to ${formatLength(form.sections.thickOuter, unit, unit === 'mm' ? 1 : 2)}`
              : formatLength(form.sections.middle, unit, unit === 'mm' ? 1 : 2)}
          </dd>
        </div>
        <div>
          <dt>material</dt>
          <dd>{`${formatNumber(form.volume / 1000, 0)} cm³`}</dd>
        </div>
      </dl>
      {told.length > 0 && (
        <ul className="ring-told">
          {told.map((text) => (
            <li key={text}>{text}</li>
          ))}
        </ul>
      )}
      <div className="ring-paper">
        <SectionDrawing input={input} form={form} unit={unit} width={width} name={name} />
      </div>
      <details className="sheet-more">
        <summary>To turn it in plywood</summary>
        <p className="footnote">{boardWords(form, input, unit)}</p>
        <table className="numbers ring-measures">
          <caption className="unseen">{`Measures of the ring of the ${name}`}</caption>
          <tbody>
            {ringMeasures(input, form, unit, behind).map(({ name: what, value }) => (
              <tr key={what}>
                <th scope="row" className="text">
                  {what}
                </th>
                <td>{value}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </details>
      <div className="row">
        <button type="button" onClick={save}>
          {`Save the ${name}’s ring as STL`}
        </button>
        <span className="footnote" role="status">
          {said}
        </span>
      </div>
    </>
  );
}

function MoreStandoff(
  props: Pick<RingSideProps, 'stage' | 'together' | 'unit' | 'locked'> & { speaker: SpeakerInput },
) {
  const { stage, speaker, together, unit, locked } = props;
  const standoff = standoffFor(stage, together);
  if (standoff === null || !speaker.mount)
    return <p className="footnote">No stand-off makes this ring possible.</p>;
  const words = formatLength(standoff, unit, unit === 'mm' ? 1 : 2);
  const mount = { ...speaker.mount, standoff };
  return (
    <button
      type="button"
      disabled={locked}
      onClick={() =>
        planStore.edit(
          'give the ring its stand-off',
          mountSpeaker(stage.option.id, speaker.id, mount),
        )
      }
    >
      {`Give ${together.length > 1 ? 'both' : 'it'} ${words} of stand-off`}
    </button>
  );
}
