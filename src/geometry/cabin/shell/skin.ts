/** Turns nets into panels: the right one and its mirror image, or one across the car. */
import { dot, mirrorY, type Vec3 } from '../../vector';
import type { Panel, Patch } from '../model';
import { patchNormal } from '../patch';
import { describePanel, type PanelKindId } from './panel-kinds';
import type { Net } from './weave';

export class Skin {
  readonly panels: Panel[] = [];

  constructor(private readonly doorThickness: number) {}

  /** A panel of the right-hand half and its mirror image; `inward` points roughly into the cabin. */
  pair(kind: PanelKindId, net: Net, inward: Vec3): void {
    this.one(kind, 'left', net, inward);
    this.one(kind, 'right', net, inward);
  }

  /** One side only of a right-hand net; on the left it is mirrored. */
  one(kind: PanelKindId, side: 'left' | 'right', net: Net, inward: Vec3): void {
    const right = face(net, inward);
    const patch: Patch =
      side === 'right' ? right : { control: net.map(mirrorY), facing: right.facing === 1 ? -1 : 1 };
    this.panels.push({ ...describePanel(kind, side, side, this.doorThickness), patch });
  }

  /** A panel across the car. */
  across(kind: PanelKindId, net: Net, inward: Vec3, part = ''): void {
    const side = part === 'center' ? 'centre' : part;
    this.panels.push({
      ...describePanel(kind, part, side, this.doorThickness),
      patch: face(net, inward),
    });
  }
}

function face(net: Net, inward: Vec3): Patch {
  const patch: Patch = { control: net, facing: 1 };
  return dot(patchNormal(patch, 0.5, 0.5), inward) < 0 ? { control: net, facing: -1 } : patch;
}
