import { along, type Vec3 } from '../../vector';
import type { Dimensions } from '../dimensions';
import type { Obstacle } from '../model';
import { rPoint } from '../seats';
import { type Backrest, backrestAxes, backrestStations, cushionStations } from './seat-body';
import { merge } from './solid';
import { inset, padded, type Station, smooth } from './upholstery';

/** Clear of the side trim. Typical value, from memory. */
const SIDE_GAP = 22;

/** Half of a bench: as wide all the way up, and with gentler bolsters than a seat of its own. */
const asBench = (stations: readonly Station[], halfWidth: number): Station[] =>
  stations.map((s) => ({
    ...s,
    bolster: s.bolster * 0.4,
    halfWidth: Math.max(s.halfWidth, halfWidth),
  }));

/** The rear bench across the car, at the rear R points, in two halves, and where each one ends. */
export function rearBench(d: Dimensions): { obstacle: Obstacle; backs: Record<string, Backrest> } {
  const r = rPoint(d, 2);
  const across = Math.max(d.rearSeatOffset + 150, d.hipRoom / 2 - SIDE_GAP);
  const halfWidth = across / 2;
  const { up } = backrestAxes(d.torsoAngle);
  const half = (y: number) => {
    const hip: Vec3 = [r.x, y, r.z];
    return {
      cushion: asBench(cushionStations(hip, halfWidth, 0), halfWidth),
      backrest: asBench(backrestStations(hip, halfWidth, d.torsoAngle), halfWidth),
    };
  };
  const halves = [half(-across / 2), half(across / 2)];
  const bodies = (fine: boolean) =>
    merge(
      ...halves.flatMap(({ cushion, backrest }) =>
        [cushion, backrest].map((s) => padded(fine ? smooth(s, 2) : s, fine)),
      ),
    );
  const last = halves[0]?.backrest.at(-1) as Station;
  const middle = along(last.face, last.out, -last.thickness / 2);
  const back = (y: number): Backrest => ({ top: [middle[0], y, middle[2]], up });
  const insets = halves.flatMap(({ cushion, backrest }) => [
    inset(smooth(cushion.slice(1, 6), 2)),
    inset(smooth(backrest.slice(1, 8), 2)),
  ]);
  return {
    backs: { 'rear-left': back(-d.rearSeatOffset), 'rear-right': back(d.rearSeatOffset) },
    obstacle: {
      id: 'rear-bench',
      name: 'rear bench',
      shape: bodies(false),
      drawn: [
        { material: 'leather', mesh: bodies(true) },
        { material: 'fabric', mesh: merge(...insets) },
      ],
      given: false,
    },
  };
}
