import type { SpeakerBody, SpeakerRing } from '../input';
import type { RingInput } from './types';
import { RIM_RADIUS } from './wedge-ring';

/** What still holds a screw and does not break while it is turned, mm. Choice of ours, no source. */
export const LEAST_THICKNESS = 4;

/** A speaker's flange, mm: typical value, from memory. */
export const FLANGE_THICKNESS = 4;

/** A recess is wider than its flange by as much all round, mm. Common practice, no source. */
const RECESS_ROOM = 0.5;

/** Flat left between flange and rim, mm. Choice of ours, no source. */
const BESIDE_FLANGE = 2;

/** Common practice, no source. */
const SCREWS = 4;

/**
 * A ring in full: what the plan says of it, the rest from the speaker's body. The bore is the
 * cut-out, the screws stand midway between it and the flange's edge.
 */
export function usualRing({ flange, cutout }: SpeakerBody, ring: SpeakerRing): RingInput {
  const { bore = cutout, rimRadius = RIM_RADIUS, leastThickness = LEAST_THICKNESS } = ring;
  const recess = flange + 2 * RECESS_ROOM;
  const sunk = ring.seat === 'sunk';
  const outer = ring.outer ?? Math.ceil((sunk ? recess : flange) + 2 * (rimRadius + BESIDE_FLANGE));
  return {
    outer,
    bore,
    leastThickness,
    rimRadius,
    seat: sunk
      ? { kind: 'sunk', recess, depth: ring.flangeThickness ?? FLANGE_THICKNESS }
      : { kind: 'proud' },
    screws: {
      circle: ring.screwCircle ?? midway(bore, flange),
      count: ring.screws ?? SCREWS,
    },
  };
}

/** To half a millimetre, as long as that lies between the two. */
function midway(bore: number, flange: number): number {
  const middle = (bore + flange) / 2;
  const rounded = Math.round(2 * middle) / 2;
  return rounded > bore && rounded < flange ? rounded : middle;
}
