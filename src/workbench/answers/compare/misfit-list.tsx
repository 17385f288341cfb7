import { type MeasuredOption, measureOf } from '../../../geometry';
import { optionTitle } from '../../../plan/edits';
import { speakerName } from '../../../plan/names';
import { capital } from '../capital';

/** What keeps which speaker of which option from fitting, with its millimetres. */
export function MisfitList({ measured }: { measured: readonly MeasuredOption[] }) {
  const told = measured.flatMap(({ stage: { option }, values }) => {
    const problems = (['keepClear', 'misfits'] as const).flatMap(
      (kind) => values.get(measureOf(kind, null).id)?.problems ?? [],
    );
    return problems.length > 0 ? [{ option, problems }] : [];
  });
  if (told.length === 0) return null;
  return (
    <details className="sheet-more">
      <summary>What does not fit, and why</summary>
      {told.map(({ option, problems }) => (
        <div key={option.id} className="compare-misfits">
          <p dir="auto">
            <strong>{optionTitle(option)}</strong>
          </p>
          <ul>
            {problems.map(({ speaker: id, sentence }) => {
              const speaker = option.speakers.find((one) => one.id === id);
              const name = speaker ? speakerName(speaker, option.speakers) : id;
              return (
                <li key={`${id} ${sentence}`}>
                  {capital(name)}: {sentence}.
                </li>
              );
            })}
          </ul>
        </div>
      ))}
      <p className="footnote">
        These are the model’s panels, not a survey of the car. What fits here has still to be
        checked in the car, and against the vehicle maker’s documents, before anything is cut.
      </p>
    </details>
  );
}
