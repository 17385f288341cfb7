/** Mirror images in the car's centre plane, Y = 0, of what a plan says about a speaker. */
import { type Aim, type Mount, mirrorY, type Side } from '../geometry';

const OTHER = { left: 'right', right: 'left' } as const;

export const otherSide = (side: Side): Side => OTHER[side];

/** Swaps the words left and right in an id: "pillar-left" → "pillar-right". */
export const mirrorId = (id: string): string =>
  id.replace(/(?<![A-Za-z])(left|right)(?![A-Za-z])/g, (word) => OTHER[word as Side]);

/** The panel on the other side; a panel on the centreline is its own image. */
export const mirrorPanelId = mirrorId;

/** The seat on the other side. */
export const mirrorSeatId = mirrorId;

/**
 * The mirrored spot. The same u, v on a left and a right panel are mirror images; across a panel
 * on the centreline u runs from the car's left to its right, so it turns round.
 */
export function mirrorMount(mount: Mount): Mount {
  const panel = mirrorPanelId(mount.panel);
  return panel === mount.panel ? { ...mount, u: 1 - mount.u } : { ...mount, panel };
}

/** The mirrored aim; a seat becomes the one on the other side. */
export function mirrorAim(aim: Aim): Aim {
  switch (aim.kind) {
    case 'direction':
      return { kind: 'direction', direction: mirrorY(aim.direction) };
    case 'point':
      return { kind: 'point', point: mirrorY(aim.point) };
    case 'seat':
      return { kind: 'seat', seat: mirrorSeatId(aim.seat) };
    case 'normal':
      return { kind: 'normal' };
  }
}
