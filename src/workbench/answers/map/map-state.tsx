import { useSession } from '../../../store';
import { asksFit, emptyWords, fitCount } from './map-words';
import type { Painting } from './use-painting';

interface MapStateProps {
  painting: Painting;
  /** A drag is under way, which the map follows when it ends. */
  waiting: boolean;
  stop: () => void;
  again: () => void;
}

/** How far the painting has come, and what came of it. */
export function MapState({ painting, waiting, stop, again }: MapStateProps) {
  return (
    <div className="map-state" data-map={painting.state}>
      {painting.state === 'painting' && (
        <div className="row">
          <progress
            aria-label="How far the painting has got"
            value={painting.done}
            max={Math.max(1, painting.total)}
          />
          <button type="button" onClick={stop}>
            Stop
          </button>
        </div>
      )}
      {painting.state === 'stopped' && (
        <div className="row">
          <button type="button" onClick={again}>
            Paint it after all
          </button>
        </div>
      )}
      <p role="status">
        <Said painting={painting} />
      </p>
      {waiting && <p className="footnote">Repainted when you let go.</p>}
    </div>
  );
}

function Said({ painting }: { painting: Painting }) {
  const map = useSession(({ painted }) => painted?.map ?? null);
  switch (painting.state) {
    case 'painting':
      return 'Painting the panels…';
    case 'stopped':
      return 'Stopped. What is painted is coarse, or of an earlier plan.';
    case 'refused':
      return `Nothing can be painted: ${painting.message}.`;
    case 'broken':
      return 'The painting broke off. Reload the page to try again.';
    case 'empty':
      return emptyWords(painting.quantity);
    case 'done':
      return map && asksFit(map) ? fitCount(map) : 'Painted.';
  }
}
