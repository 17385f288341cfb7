/** What the lines of a template are, with their measures, in a corner of the page. */

export interface LegendLine {
  /** Class of the line in the drawing: "template-cutout". */
  line: string;
  words: string;
}

const STEP = 4.6;

/** Height of a legend, mm. */
export const legendHeight = (lines: readonly LegendLine[]): number => lines.length * STEP + 2;

/** @param x,y of its upper left corner, mm */
export function TemplateLegend(props: { x: number; y: number; lines: readonly LegendLine[] }) {
  const { x, y, lines } = props;
  return (
    <g className="template">
      {lines.map(({ line, words }, i) => {
        const middle = y + STEP * (i + 0.7);
        return (
          <g key={line}>
            <path className={line} d={`M${x} ${middle}h13`} />
            <text className="template-text" x={x + 15} y={middle + 1.1} fontSize={3.2}>
              {words}
            </text>
          </g>
        );
      })}
    </g>
  );
}
