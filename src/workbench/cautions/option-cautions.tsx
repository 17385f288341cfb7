import { CAUTIONS, SHORT_CAUTION } from '../../exchange/cautions';
import { zoneName, zonesOfOption } from '../../exchange/keep-clear/spot-zones';
import { ZONES_CAUTION } from '../../exchange/keep-clear/zone-cautions';
import { speakerName } from '../../plan/names';
import { useAnswer, usePlan } from '../../store';
import { CautionList } from './caution-list';
import './cautions.css';

/** The cautions for a whole option: which of its speakers reach into which keep-clear zones. */
export function OptionCautions({ option: id }: { option: string | null }) {
  const answer = useAnswer();
  const option = usePlan((state) => state.plan.options.find((one) => one.id === id));
  const result = answer.ok ? answer.options.find((one) => one.id === id) : undefined;
  const reaching =
    answer.ok && option && result
      ? zonesOfOption(answer.cabin, option, result).filter(({ zones }) => zones.length > 0)
      : [];
  return (
    <section className="cautions" aria-label="Cautions">
      {reaching.length > 0 && (
        <div className="cautions-zone">
          <p>
            <strong>
              <span aria-hidden="true">✕ </span>Into keep-clear zones
            </strong>{' '}
            reach these speakers, {ZONES_CAUTION}
          </p>
          <ul>
            {reaching.map(({ speaker, zones }) => (
              <li key={speaker.id}>
                {`${speakerName(speaker, option?.speakers)}: ${zones.map(zoneName).join(', ')}`}
              </li>
            ))}
          </ul>
        </div>
      )}
      <p className="cautions-short">{SHORT_CAUTION}</p>
      <details>
        <summary>Before cutting, drilling or driving: all cautions</summary>
        <CautionList list={CAUTIONS} />
      </details>
    </section>
  );
}
