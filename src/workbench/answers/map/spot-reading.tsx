import type { GridSpot, Panel, SpotReading } from '../../../geometry';
import { formatLength, type LengthUnit } from '../../../plan/units';
import { toLength } from '../../parts/along-panel';
import { QUANTITIES, readingText, type WORDS } from './map-quantities';
import { fitSentence } from './map-words';

export interface SpotReadingProps {
  panel: Panel;
  spot: GridSpot;
  reading: SpotReading;
  unit: LengthUnit;
  /** Shown only where it is weighed. */
  blend: boolean;
  /** Flange, cut-out and depth were entered. */
  hasBody: boolean;
}

/** Every number at one spot, and why the speaker does not fit there. */
export function SpotReadingTable(props: SpotReadingProps) {
  const { panel, spot, reading, unit, blend, hasBody } = props;
  const { values, misfits } = reading;
  return (
    <div className="map-reading">
      <p className="map-where">
        <strong className="first-large">{panel.name}</strong>,{' '}
        {placeText(panel, spot.u, spot.v, unit)}
      </p>
      <dl className="map-values">
        {QUANTITIES.filter((quantity) => quantity !== 'blend' || blend).map((quantity) => (
          <div key={quantity} data-quantity={quantity}>
            <dt>{SHORT[quantity]}</dt>
            <dd>{readingText(quantity, values[quantity], unit)}</dd>
          </div>
        ))}
      </dl>
      {misfits.length === 0 ? (
        <p className="map-fit">
          {hasBody
            ? 'It fits there, as far as the model knows.'
            : 'Nothing is in its way there; its body is not entered, so more is not known.'}
        </p>
      ) : (
        <ul className="map-fit map-misfit" aria-label="Why it does not fit there">
          {misfits.map(({ sentence }) => (
            <li key={sentence}>{fitSentence(sentence, unit)}</li>
          ))}
        </ul>
      )}
    </div>
  );
}

/** Beside the numbers, where there is little room. */
const SHORT: Readonly<Record<keyof typeof WORDS, string>> = {
  difference: 'Left minus right',
  offAxisDeg: 'Off axis',
  obstructionDb: 'Obstruction',
  firstReflectionTime: 'First reflection',
  pathSpread: 'Path spread',
  blend: 'Blend',
};

/** "240 mm along, 80 mm across". */
export const placeText = ({ patch }: Panel, u: number, v: number, unit: LengthUnit): string =>
  `${formatLength(toLength(patch, 'u', v, u), unit)} along, ${formatLength(toLength(patch, 'v', u, v), unit)} across`;
