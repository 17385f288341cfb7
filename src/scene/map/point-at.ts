import { sessionStore } from '../../store';
import type { Drawing } from '../drawing';
import type { Ray } from '../pick/ray';

export interface MapPointer {
  /** The pointer is here now; asked at most once a frame, and only while a map is painted. */
  over(sight: () => Ray): void;
  /** Holds the painted spot here, so that the pointer may go on; false where there is none. */
  hold(ray: Ray): boolean;
  end(): void;
}

/** Reads a painted map under the pointer: where it points goes into the session, nothing more. */
export function mapPointer(drawing: Pick<Drawing, 'paintedSpot'>): MapPointer {
  let waiting: number | null = null;
  let last: (() => Ray) | null = null;

  function set(at: number | null, held: boolean): void {
    const { painted } = sessionStore.getState();
    if (!painted || (painted.at === at && painted.held === held)) return;
    sessionStore.setState({ painted: { ...painted, at, held } });
  }

  function read(): void {
    waiting = null;
    const { painted } = sessionStore.getState();
    if (!painted || painted.held || !last) return;
    const at = drawing.paintedSpot(last());
    // Off the map the last reading stays: the pointer may be on its way to a button.
    if (at !== null) set(at, false);
  }

  return {
    over(sight) {
      const { painted } = sessionStore.getState();
      if (!painted || painted.held) return;
      last = sight;
      waiting ??= requestAnimationFrame(read);
    },
    hold(ray) {
      const at = drawing.paintedSpot(ray);
      if (at === null) return false;
      const { painted } = sessionStore.getState();
      // A second click on the held spot lets go of it.
      set(at, !(painted?.held && painted.at === at));
      return true;
    },
    end() {
      if (waiting !== null) cancelAnimationFrame(waiting);
    },
  };
}
