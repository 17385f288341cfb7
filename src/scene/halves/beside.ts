/** The second drawing: another option over the same car, to look at. */
import { Matrix4, type PerspectiveCamera } from 'three';
import type { CabinModel, OptionResult, SeatResult } from '../../geometry';
import { planStore, sessionStore } from '../../store';
import type { Hovered } from '../attention';
import { createLabels } from '../labels';
import { createOptionDrawing, speakersOf } from '../option-drawing';
import type { Kit } from '../parts/kit';
import type { Surroundings } from '../parts/lines-part';
import type { PanelsPart } from '../parts/panels-part';
import type { ZonesPart } from '../parts/zones-part';

export interface BesideNeeds {
  kit: Kit;
  panels: PanelsPart;
  zones: ZonesPart;
  around: Surroundings;
  overlay: HTMLElement;
  ask(): void;
}

export interface BesideShown {
  cabin: CabinModel;
  /** The other option's answer; of an earlier moment while a drag runs. */
  option: OptionResult | null;
  /** Id of the seat in view. */
  inView: string | null;
  hovered: Hovered;
  lookedThrough: string | null;
}

export function createBeside({ kit, panels, zones, around, overlay, ask }: BesideNeeds) {
  const drawing = createOptionDrawing(kit, panels, around, () => {
    due = true;
    ask();
  });
  const labels = createLabels(overlay);
  /** The cabin this option was last answered in: in a drag only the one on the board is. */
  let answeredIn: CabinModel | null = null;
  let shown: BesideShown | null = null;
  let seat: SeatResult | null = null;
  let from: readonly unknown[] = [];
  let due = true;
  const [eye, lens] = [new Matrix4(), new Matrix4()];

  return {
    drawing,
    /** Takes up what is to be shown; in a drag of what the other option has, that is nothing. */
    show(next: BesideShown): void {
      const { cabin, option, inView, hovered, lookedThrough } = next;
      const dragging = planStore.getState().gesture !== null;
      const plan = planStore.shown();
      const own = plan.options.find(({ id }) => id === option?.id);
      const seen = [cabin, option, own, hovered, sessionStore.getState(), dragging || plan];
      if (!due && seen.every((one, i) => one === from[i])) return;
      from = seen;
      due = true;
      if (!dragging || option !== shown?.option) answeredIn = cabin;
      shown = next;
      seat = option?.seats.find(({ id }) => id === inView) ?? null;
      drawing.show({ cabin, option, seat, hovered, lookedThrough });
    },
    /** True while what was changed in a drag has not been worked out for this option. */
    late: () => shown !== null && answeredIn !== shown.cabin,
    /** The picture is to be drawn anew for a reason that lies outside the option. */
    spoil(): void {
      due = true;
    },
    /** True when the picture must be drawn again: something shown or the eye has changed. */
    renewed(camera: PerspectiveCamera, size: { width: number; height: number }): boolean {
      if (!due && eye.equals(camera.matrixWorld) && lens.equals(camera.projectionMatrix))
        return false;
      due = false;
      eye.copy(camera.matrixWorld);
      lens.copy(camera.projectionMatrix);
      if (!shown) return true;
      const { cabin, option, hovered } = shown;
      const frame = { camera, size, cabin, seat, hovered, among: speakersOf(option) };
      const faded = answeredIn !== cabin;
      const wants = drawing
        .words(frame, zones.middles())
        // Handles are for what can be taken hold of.
        .filter(({ kind }) => kind !== 'tip')
        .map((want) => (faded ? { ...want, faded } : want));
      labels.lay(wants, size);
      return true;
    },
    end() {
      labels.end();
      drawing.dispose();
      drawing.group.removeFromParent();
    },
  };
}

export type Beside = ReturnType<typeof createBeside>;
