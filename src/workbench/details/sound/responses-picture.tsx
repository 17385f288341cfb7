import type { OffAxisResponse } from '../../../geometry';
import { commonHz, coverageWords, shownAngle } from './coverage';
import { type Curve, curvesOf, PICTURE } from './picture-curves';

interface ResponsesPictureProps {
  responses: readonly OffAxisResponse[];
  bandHz: readonly [number, number] | undefined;
}

/** Level against the axis at each angle over frequency, as it was measured; the band is shaded. */
export function ResponsesPicture({ responses, bandHz }: ResponsesPictureProps) {
  const [low, high] = commonHz(responses);
  const picture = curvesOf(responses, bandHz);
  if (!picture || !(low < high)) return null;
  const { curves, xAt, yAt, frequencies, levels } = picture;
  const { width, height, left, right, top, bottom } = PICTURE;
  const band = bandHz && [xAt(bandHz[0]), xAt(bandHz[1])];
  return (
    <figure className="responses-picture">
      <svg
        viewBox={`0 0 ${width} ${height}`}
        role="img"
        aria-label={`Level against the axis: ${coverageWords(responses)}`}
      >
        {band && (
          <rect
            className="band"
            x={band[0]}
            y={top}
            width={Math.max(0, (band[1] as number) - (band[0] as number))}
            height={height - top - bottom}
          />
        )}
        {levels.map((db) => (
          <g key={db}>
            <line
              className={db === 0 ? 'rule rule-axis' : 'rule'}
              x1={left}
              x2={width - right}
              y1={yAt(db)}
              y2={yAt(db)}
            />
            <text className="end" x={left - 6} y={yAt(db) + 4}>
              {db < 0 ? `−${-db}` : db}
            </text>
          </g>
        ))}
        {frequencies.map(({ hz, label }) => (
          <g key={hz}>
            <line className="rule" x1={xAt(hz)} x2={xAt(hz)} y1={top} y2={height - bottom} />
            {label && (
              <text className="middle" x={xAt(hz)} y={height - bottom + 16}>
                {label}
              </text>
            )}
          </g>
        ))}
        {curves.map((curve) => (
          <CurveLine key={curve.offAxisDeg} curve={curve} />
        ))}
      </svg>
      <figcaption className="footnote">
        dB against the axis, over Hz{band ? '; shaded: the band it plays' : ''}.
      </figcaption>
    </figure>
  );
}

function CurveLine({ curve }: { curve: Curve }) {
  const { width, right } = PICTURE;
  return (
    <g>
      <polyline
        className={curve.offAxisDeg === 0 ? 'curve curve-axis' : 'curve'}
        points={curve.points}
      />
      <text x={width - right + 5} y={curve.labelY + 4}>
        {shownAngle(curve.offAxisDeg)}
      </text>
    </g>
  );
}
