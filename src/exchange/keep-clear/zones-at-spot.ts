import {
  add,
  along,
  cross,
  direction,
  type KeepClearZone,
  type PlacedSpeaker,
  type SpeakerBody,
  scale,
  type Vec3,
} from '../../geometry';
import { insideShape } from './inside-shape';

/** How the body is felt out: rings of points, front to back. Fine enough for zones of 20 mm. */
const AROUND = 12;
const DEPTHS = [0, 0.25, 0.5, 0.75, 1] as const;

/**
 * Keep-clear zones that a speaker's body reaches into: its front at the spot, the rest behind it,
 * against the panel's normal (or its axis where it stands free). Without a known body, the spot
 * alone is tried.
 */
export function zonesAtSpot(
  zones: readonly KeepClearZone[],
  placed: PlacedSpeaker,
  body: SpeakerBody | undefined,
): KeepClearZone[] {
  const points = bodyPoints(placed, body);
  return zones.filter((zone) => points.some((point) => insideShape(zone.shape, point)));
}

function bodyPoints(placed: PlacedSpeaker, body: SpeakerBody | undefined): Vec3[] {
  const outward = placed.normal ?? placed.axis;
  const n = outward && direction(outward);
  if (!n || !body) return [placed.position];
  const a = direction(cross(n, Math.abs(n[2]) < 0.9 ? [0, 0, 1] : [1, 0, 0])) as Vec3;
  const b = cross(n, a);
  const points: Vec3[] = [];
  for (const part of DEPTHS) {
    const centre = along(placed.position, n, -part * body.depth);
    // The flange is the front only; behind it the body fills the cut-out.
    const radius = (part === 0 ? body.flange : body.cutout) / 2;
    points.push(centre);
    for (let i = 0; i < AROUND; i++) {
      const t = (2 * Math.PI * i) / AROUND;
      points.push(add(centre, add(scale(a, Math.cos(t) * radius), scale(b, Math.sin(t) * radius))));
    }
  }
  return points;
}
