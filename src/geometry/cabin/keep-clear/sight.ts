import { degrees, radians, type Vec3 } from '../../vector';
import type { PatchFinder } from '../furniture/patches';
import { loft } from '../furniture/solid';
import type { KeepClearZone, Patch, Seat } from '../model';
import { pointOnPatch } from '../patch';
import { zone } from './zone';

/** UN R125 looks past the pillar in horizontal sections 2 degrees up and 5 down. From memory. */
const UP_DEG = 2;
const DOWN_DEG = -5;
/** How much of the view beside the pillar is kept: as much as R125 lets one pillar hide. */
const BESIDE_DEG = 6;
/** The zone begins this far along the line of sight: nobody mounts anything nearer the eyes. */
const FROM = 0.4;

/** Where along a pillar's edge (u = 0 screen, 1 door glass) the eye sees it at eye level. */
function edgeAtEyeLevel(pillar: Patch, u: number, eye: Vec3): Vec3 {
  let best = pointOnPatch(pillar, u, 0);
  for (let i = 1; i <= 40; i++) {
    const p = pointOnPatch(pillar, u, i / 40);
    if (Math.abs(p[2] - eye[2] + 18) < Math.abs(best[2] - eye[2] + 18)) best = p;
  }
  return best;
}

/** The block of view beside one edge, `turn` degrees away from the pillar, up to that edge. */
function beside(eye: Vec3, edge: Vec3, turn: number) {
  const [dx, dy] = [edge[0] - eye[0], edge[1] - eye[1]];
  const reach = Math.sqrt(dx * dx + dy * dy);
  const bearing = degrees(Math.atan2(dy, -dx));
  const at = (part: number, turnDeg: number, upDeg: number): Vec3 => {
    const a = radians(bearing + turnDeg);
    const r = reach * part;
    return [
      eye[0] - r * Math.cos(a),
      eye[1] + r * Math.sin(a),
      eye[2] + r * Math.tan(radians(upDeg)),
    ];
  };
  const cut = (part: number) => [
    at(part, 0, DOWN_DEG),
    at(part, turn, DOWN_DEG),
    at(part, turn, UP_DEG),
    at(part, 0, UP_DEG),
  ];
  return loft([cut(FROM), cut(1)]);
}

/** The view of the road on both sides of each front pillar, from the eyes at the wheel. */
export function sightLines(find: PatchFinder, wheelSeat: Seat): KeepClearZone[] {
  const zones: KeepClearZone[] = [];
  for (const side of ['left', 'right'] as const) {
    const pillar = find(`pillar-${side}`);
    if (!pillar) continue;
    // From a bearing that grows to the right, the left pillar's screen lies to its right.
    const toScreen = side === 'left' ? BESIDE_DEG : -BESIDE_DEG;
    for (const [where, u, turn] of [
      ['screen', 0, toScreen],
      ['glass', 1, -toScreen],
    ] as const) {
      const edge = edgeAtEyeLevel(pillar, u, wheelSeat.eye);
      zones.push(
        zone(
          `sight-line-${where}-${side}`,
          `view past the ${side} pillar, ${where} side`,
          'sight line',
          beside(wheelSeat.eye, edge, turn),
        ),
      );
    }
  }
  return zones;
}
