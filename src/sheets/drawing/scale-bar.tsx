import { useWords } from '../words/use-words';
import { niceBar } from './nice-bar';
import type { Point } from './visible-lines';

/** The longest a bar may be on paper, mm. */
const LONGEST = 32;

/** A bar as long on paper as it says, at the drawing's scale, from its lower left corner. */
export function ScaleBar({ scale, at: [x, y] }: { scale: number; at: Point }) {
  const { n } = useWords();
  const length = niceBar(scale, n.unit, LONGEST);
  const right = x + length * scale;
  const text = n.length(length, 0);
  return (
    <g data-scale-bar={length}>
      {/* One stroke and nothing else has this width on a drawing, so that it can be measured. */}
      <path
        d={`M${x} ${y - 1.2}V${y}H${right}V${y - 1.2}`}
        fill="none"
        stroke="#16150f"
        strokeWidth={0.25}
      />
      <rect
        x={(x + right) / 2 - text.length * 0.75}
        y={y - 3.4}
        width={text.length * 1.5}
        height={2.6}
        fill="white"
        fillOpacity={0.85}
      />
      <text x={(x + right) / 2} y={y - 1.4} fontSize={2.3} textAnchor="middle" fill="#16150f">
        {text}
      </text>
    </g>
  );
}
