import type { FileChoice, FileReading } from '../../../exchange/response-files';
import { formatFrequency, formatNumber } from '../../../plan/units';
import { angleKind } from '../../parts/field-kind';
import { NumberField } from '../../parts/number-field';
import { SelectField } from '../../parts/select-field';
import { sentence, shownAngle } from './coverage';

interface ResponseFileRowProps {
  reading: FileReading;
  onSay: (choice: FileChoice) => void;
  onRemove: () => void;
}

/** One file: what was found in it, and what only the user can say. */
export function ResponseFileRow({ reading, onSay, onRemove }: ResponseFileRowProps) {
  const { name, asksAngle, angleDeg, third, problem } = reading;
  return (
    <li>
      <p className="responses-file-name">
        <strong dir="auto">{name}</strong> <span className="quiet-text">{foundIn(reading)}</span>
      </p>
      {asksAngle && (
        <NumberField
          label="Off the axis"
          value={angleDeg}
          kind={angleKind}
          min={0}
          max={180}
          onClear={() => onSay({ angleDeg: null })}
          sink={{ commit: (value) => onSay({ angleDeg: value }) }}
        />
      )}
      {third && (
        <SelectField
          label="Third column"
          value={third}
          choices={[
            { value: 'phase', label: 'phase' },
            { value: 'angle', label: 'angle' },
          ]}
          onChange={(value) => onSay({ third: value as 'phase' | 'angle' })}
        />
      )}
      <button type="button" onClick={onRemove}>
        Leave out<span className="unseen"> {name}</span>
      </button>
      {problem !== null && (
        <p className="responses-file-error" role="alert">
          {sentence(problem)}
        </p>
      )}
    </li>
  );
}

/** "0°, 15°, 30°; 200 Hz to 20 kHz; 481 points each". */
function foundIn({ responses }: FileReading): string {
  const [first] = responses;
  if (!first) return 'cannot be read';
  const low = Math.max(...responses.map(({ frequencyHz }) => frequencyHz[0] as number));
  const high = Math.min(...responses.map(({ frequencyHz }) => frequencyHz.at(-1) as number));
  const angles = responses.flatMap(({ offAxisDeg }) => offAxisDeg ?? []).map(shownAngle);
  const points = formatNumber(first.frequencyHz.length);
  return [
    ...(angles.length > 1 ? [angles.join(', ')] : []),
    `${formatFrequency(low)} to ${formatFrequency(high)}`,
    `${points} points${responses.length > 1 ? ' each' : ''}`,
    ...(first.phaseDeg ? ['with phase'] : []),
  ].join('; ');
}
