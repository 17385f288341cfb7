import { inSlices, paintOpenness, type Shaded } from './openness';

/** A cabin that has not changed for this long is worth shading, ms. */
const STILL_MS = 350;

export interface ShadeLater {
  /** The solids changed: shade them once they have stood still; the first time at once. */
  due(): void;
  /** True once a first shading is done. */
  done(): boolean;
  end(): void;
}

/** Paints the soft shade in the background and asks for a frame when it is dry. */
export function shadeLater(solids: () => readonly Shaded[], ask: () => void): ShadeLater {
  let dry = false;
  let stop: () => void = () => {};
  return {
    due() {
      stop();
      const timer = setTimeout(
        () => {
          const targets = solids();
          stop = inSlices(paintOpenness(targets, targets), () => {
            stop = () => {};
            dry = true;
            ask();
          });
        },
        dry ? STILL_MS : 0,
      );
      stop = () => clearTimeout(timer);
    },
    done: () => dry,
    end: () => stop(),
  };
}
