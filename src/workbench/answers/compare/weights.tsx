import { VERDICT_AIMS, type VerdictAim, type VerdictWeights } from '../../../geometry';
import { SelectField } from '../../parts/select-field';

const NAMES: Readonly<Record<VerdictAim, string>> = {
  difference: 'Left and right apart',
  offAxisDeg: 'Off axis',
  obstructionDb: 'Loss to what is in the way',
  firstReflectionTime: 'A late first reflection',
  pathSpread: 'Path spread of a side',
};

const CHOICES = [
  { value: '0', label: 'does not count' },
  { value: '0.2', label: 'counts a little' },
  { value: '0.5', label: 'counts half' },
  { value: '1', label: 'counts in full' },
  { value: '2', label: 'counts double' },
];

interface WeightsProps {
  weights: VerdictWeights;
  onChange: (weights: VerdictWeights) => void;
}

/** What the verdict goes by. */
export function Weights({ weights, onChange }: WeightsProps) {
  return (
    <details className="sheet-more">
      <summary>What counts, and how much</summary>
      <div className="compare-weights">
        {VERDICT_AIMS.map((aim) => (
          <SelectField
            key={aim}
            label={NAMES[aim]}
            value={String(weights[aim] ?? 0)}
            choices={CHOICES}
            onChange={(value) => onChange({ ...weights, [aim]: Number(value) })}
          />
        ))}
      </div>
    </details>
  );
}
