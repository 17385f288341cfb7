import { useMemo } from 'react';
import { cividisAt } from '../../../plan/cividis';
import { colourShare, levelText } from '../../../plan/painted';
import { useSession } from '../../../store';
import { unitWord, valueText, WORDS } from './map-quantities';
import { asksFit } from './map-words';
import { paintScale } from './paint-scale';

/** In the drawing's own units; it is stretched to the width there is. */
const WIDTH = 360;
const BAR = { top: 2, height: 18 };
const HEIGHT = 40;
const STRIPS = 90;

/** What the colours, the lines and the hatching of the painted map mean. */
export function MapLegend() {
  const unit = useSession(({ lengthUnit }) => lengthUnit);
  const map = useSession(({ painted }) => painted?.map ?? null);
  const quantity = useSession(({ painted }) => painted?.quantity ?? null);
  const scale = useMemo(
    () => (map && quantity ? paintScale(map, quantity, unit) : null),
    [map, quantity, unit],
  );
  if (!scale || !quantity) return null;
  const { range, levels, below, above } = scale;
  const fits = map !== null && asksFit(map);
  const x = (value: number) => 14 + colourShare(value, range) * (WIDTH - 28);
  const ends = [
    { value: range[0], text: `${below ? '≤ ' : ''}${levelText(quantity, range[0], unit)}` },
    { value: range[1], text: `${above ? '≥ ' : ''}${levelText(quantity, range[1], unit)}` },
  ];
  const said = (value: number) => valueText(quantity, value, unit);
  return (
    <figure className="map-legend">
      <figcaption>
        <span>
          {WORDS[quantity].title}
          {unitWord(quantity, unit) && (
            <span className="quiet-text">, {unitWord(quantity, unit)}</span>
          )}
        </span>
        {fits && (
          <>
            <span>
              <Swatch cross={false} /> does not fit
            </span>
            <span>
              <Swatch cross /> kept clear
            </span>
          </>
        )}
      </figcaption>
      <svg
        viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
        role="img"
        aria-label={`Dark blue is ${said(range[0])}${below ? ' or less' : ''}, yellow ${said(range[1])}${above ? ' or more' : ''}; lines at ${levels.map((level) => levelText(quantity, level, unit)).join(', ')}`}
      >
        {Array.from({ length: STRIPS }, (_, k) => {
          const wide = (WIDTH - 28) / STRIPS;
          return (
            <rect
              // biome-ignore lint/suspicious/noArrayIndexKey: strips have no other name
              key={k}
              x={14 + k * wide}
              y={BAR.top}
              width={wide + 0.5}
              height={BAR.height}
              fill={`rgb(${cividisAt((k + 0.5) / STRIPS).join(' ')})`}
            />
          );
        })}
        <rect
          className="map-legend-rim"
          x={14}
          y={BAR.top}
          width={WIDTH - 28}
          height={BAR.height}
        />
        {levels.map((level) => (
          <g key={level}>
            <path
              className={colourShare(level, range) < 0.55 ? 'map-iso-light' : 'map-iso-dark'}
              d={`M${x(level)} ${BAR.top}v${BAR.height}`}
            />
            <text className="map-legend-number" x={x(level)} y={HEIGHT - 6} textAnchor="middle">
              {levelText(quantity, level, unit)}
            </text>
          </g>
        ))}
        {ends.map(({ value, text }, end) => (
          <text
            key={value}
            className="map-legend-number"
            x={end === 0 ? 0 : WIDTH}
            y={HEIGHT - 6}
            textAnchor={end === 0 ? 'start' : 'end'}
          >
            {text}
          </text>
        ))}
      </svg>
    </figure>
  );
}

function Swatch({ cross }: { cross: boolean }) {
  return (
    <svg className="map-swatch" width="22" height="14" viewBox="0 0 22 14" aria-hidden="true">
      <path d="M-4 14L10 0M2 14L16 0M8 14L22 0M14 14L28 0" />
      {cross && <path d="M-4 0L10 14M2 0L16 14M8 0L22 14M14 0L28 14" />}
      <rect x="0.5" y="0.5" width="21" height="13" />
    </svg>
  );
}
