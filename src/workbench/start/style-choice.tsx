import { useId } from 'react';
import { TEMPLATES } from '../../geometry';
import type { FlatShape } from '../dimensions/drawing/outline';
import { boxOf, fitToPaper } from '../dimensions/drawing/project';
import { FlatShapes } from '../dimensions/drawing/tape-drawing';
import { useSilhouettes } from './silhouettes';

export interface StyleChoiceProps {
  value: string;
  onChange: (template: string) => void;
}

/** The twelve body styles from the side, all to one scale; a group of radio buttons. */
export function StyleChoice({ value, onChange }: StyleChoiceProps) {
  const silhouettes = useSilhouettes();
  const name = useId();
  return (
    <fieldset className="style-choice">
      <legend>Body style</legend>
      <div className="style-cards">
        {TEMPLATES.map((template) => (
          <label key={template.id} className="style-card">
            <input
              type="radio"
              name={name}
              value={template.id}
              checked={template.id === value}
              onChange={() => onChange(template.id)}
            />
            <Silhouette shapes={silhouettes.get(template.id) ?? []} />
            <span>{template.name}</span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}

/** The paper all body styles are drawn on, mm: room for the longest and the tallest. */
const PAPER = { length: 5700, height: 2300 };
const WIDTH = 228;

function Silhouette({ shapes }: { shapes: readonly FlatShape[] }) {
  const box = boxOf(shapes.flatMap((shape) => shape.points));
  const middle = box ? (box.left + box.right) / 2 : 0;
  const ground = box?.bottom ?? 0;
  const paper = fitToPaper(
    {
      left: middle - PAPER.length / 2,
      right: middle + PAPER.length / 2,
      top: ground - PAPER.height,
      bottom: ground,
    },
    WIDTH,
    WIDTH,
    3,
  );
  return (
    <svg viewBox={`0 0 ${paper.width} ${paper.height.toFixed(1)}`} aria-hidden="true">
      <FlatShapes shapes={shapes} paper={paper} />
    </svg>
  );
}
