/** The second drawing: another option over the same car, to look at. */
import type { PerspectiveCamera } from 'three';
import type { CabinModel, OptionResult, SeatResult } from '../../geometry';
import { planStore } from '../../store';
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

export function createBeside({ kit, panels, zones, around, overlay, ask }: BesideNeeds) {
  const drawing = createOptionDrawing(kit, panels, around, ask);
  const labels = createLabels(overlay);
  /** The cabin this option was last answered in: in a drag only the one on the board is. */
  let answeredIn: CabinModel | null = null;
  let option: OptionResult | null = null;
  let seat: SeatResult | null = null;

  return {
    drawing,
    show(
      cabin: CabinModel,
      answered: OptionResult | null,
      inView: string | null,
      how: { hovered: Hovered; lookedThrough: string | null },
    ): void {
      if (planStore.getState().gesture === null || answered !== option) answeredIn = cabin;
      option = answered;
      seat = option?.seats.find(({ id }) => id === inView) ?? null;
      drawing.show({ cabin, option, seat, ...how });
    },
    /** True while what was changed in a drag has not been worked out for this option. */
    late: (cabin: CabinModel) => answeredIn !== cabin,
    lay(
      camera: PerspectiveCamera,
      size: { width: number; height: number },
      cabin: CabinModel,
      hovered: Hovered,
    ): void {
      const frame = { camera, size, cabin, seat, hovered, among: speakersOf(option) };
      const faded = answeredIn !== cabin;
      const wants = drawing
        .words(frame, zones.middles())
        // Handles are for what can be taken hold of.
        .filter(({ kind }) => kind !== 'tip')
        .map((want) => (faded ? { ...want, faded } : want));
      labels.lay(wants, size);
    },
    end() {
      labels.end();
      drawing.dispose();
      drawing.group.removeFromParent();
    },
  };
}

export type Beside = ReturnType<typeof createBeside>;
