import { RULER } from './printer-scale';

export interface RulerProps {
  /** Zero mark: mm from the window's upper left corner. */
  x: number;
  y: number;
  /** Across the page, marks downward; or up the page, marks to the left. */
  way: 'across' | 'up';
}

/** A line of 100 mm with a mark at each 1, 5 and 10 mm: what is drawn is what is measured. */
export function Ruler({ x, y, way }: RulerProps) {
  const marks = Array.from({ length: RULER + 1 }, (_, mm) => {
    const long = mm % 10 === 0 ? 5 : mm % 5 === 0 ? 3.4 : 2;
    return way === 'across' ? `M${x + mm} ${y}v${long}` : `M${x} ${y - mm}h${-long}`;
  });
  const tens = Array.from({ length: RULER / 10 + 1 }, (_, i) => i * 10);
  return (
    <g className={`ruler ruler-${way}`}>
      <path
        className="ruler-base"
        data-ruler={way}
        d={way === 'across' ? `M${x} ${y}h${RULER}` : `M${x} ${y}v${-RULER}`}
      />
      <path className="ruler-marks" d={marks.join('')} />
      {tens.map((mm) =>
        way === 'across' ? (
          <text key={mm} x={x + mm} y={y + 8} fontSize={2.6} textAnchor="middle">
            {mm}
          </text>
        ) : (
          <text key={mm} x={x - 5.6} y={y - mm + 0.9} fontSize={2.6} textAnchor="end">
            {mm}
          </text>
        ),
      )}
    </g>
  );
}
