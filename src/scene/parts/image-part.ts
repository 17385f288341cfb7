/** The fan of the image, over everything. */
import { Group } from 'three';
import type { Seat } from '../../geometry';
import { type Fan, type FanView, imageFan } from '../image/fan';
import type { KeptImage } from '../image/keep-image';
import { type Kit, LAYER } from './kit';
import { strokeSheet } from './stroke-sheet';

export interface ShownFan {
  fan: Fan;
  faded: boolean;
}

export interface ImagePart {
  group: Group;
  /** Nothing where there is no image, or no way to look at it. */
  show(kept: KeptImage | null, seat: Seat | null, view: FanView | null): void;
  shown(): ShownFan | null;
  dispose(): void;
}

export function createImagePart(kit: Kit): ImagePart {
  const group = new Group();
  const sheet = strokeSheet([[kit.marks, LAYER.marks]]);
  group.add(...sheet.meshes);
  let shown: ShownFan | null = null;
  let drawn: { image: unknown; seat: Seat; view: FanView; faded: boolean } | null = null;
  return {
    group,
    show(kept, seat, view) {
      group.visible = kept !== null && seat !== null && view !== null;
      if (!kept || !seat || !view) {
        shown = null;
        drawn = null;
        return;
      }
      const { image } = kept;
      const faded = !kept.fresh;
      const stands =
        drawn?.image === image &&
        drawn.seat === seat &&
        drawn.view === view &&
        drawn.faded === faded;
      if (stands) return;
      drawn = { image, seat, view, faded };
      const fan = imageFan(image, seat, view, faded);
      shown = { fan, faded };
      sheet.draw(fan.strokes);
    },
    shown: () => shown,
    dispose: () => sheet.dispose(),
  };
}
