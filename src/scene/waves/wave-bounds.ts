/** Where in the cabin waves are drawn: spheres that reached through the doors would hide the car. */
import { type CabinModel, carFromAbove, tessellatePanel } from '../../geometry';
import { EDGES } from '../shading/wave-material';

export interface WaveBounds {
  /** Which way out, across and rearward, of length 1, and how far from the middle of the axes; mm. */
  edges: readonly (readonly [across: number, rearward: number, far: number])[];
  /** Heights, mm. */
  floor: number;
  roof: number;
}

/** A wave just at a panel is still inside, mm. */
const ROOM = 15;

const kept = new WeakMap<CabinModel, WaveBounds>();

/** Straight edges round the cabin, and its floor and roof; without panels no bounds at all. */
export function waveBounds(cabin: CabinModel): WaveBounds {
  let bounds = kept.get(cabin);
  if (!bounds) {
    bounds = boundsOf(cabin);
    kept.set(cabin, bounds);
  }
  return bounds;
}

function boundsOf(cabin: CabinModel): WaveBounds {
  const heights = cabin.panels.flatMap((panel) =>
    tessellatePanel(panel).vertices.map(([, , z]) => z),
  );
  const { outline } = carFromAbove(cabin, 0);
  const bare = outline.length === 0;
  const edges = Array.from({ length: EDGES }, (_, i) => {
    const turn = (2 * Math.PI * i) / EDGES;
    const [across, rearward] = [Math.cos(turn), Math.sin(turn)];
    const far = outline.reduce((most, [x, y]) => Math.max(most, x * across + y * rearward), -1e6);
    return [across, rearward, bare ? 1e6 : far + ROOM] as const;
  });
  const most = (sign: 1 | -1) => heights.reduce((far, z) => Math.max(far, sign * z), -1e6);
  return {
    edges,
    floor: bare ? -1e6 : -most(-1) - ROOM,
    roof: bare ? 1e6 : most(1) + ROOM,
  };
}
