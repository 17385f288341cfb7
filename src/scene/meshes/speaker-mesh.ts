/** One speaker's body, turned on a lathe about its axis: flange, surround, cone or dome, basket. */
import type { MeshShape, SpeakerBody, Vec3 } from '../../geometry';
import type { Part } from './solid';

const AROUND = 40;

/** Points (radius, height): height 0 is the flange's front, positive into the cabin. */
type Profile = readonly (readonly [number, number])[];

function lathe(profile: Profile): MeshShape {
  const vertices: Vec3[] = [];
  const triangles: [number, number, number][] = [];
  profile.forEach(([radius, height], row) => {
    for (let i = 0; i < AROUND; i++) {
      const t = (2 * Math.PI * i) / AROUND;
      vertices.push([radius * Math.cos(t), radius * Math.sin(t), height]);
      if (row === 0) continue;
      const at = (r: number, k: number) => r * AROUND + (k % AROUND);
      triangles.push(
        [at(row - 1, i), at(row, i + 1), at(row - 1, i + 1)],
        [at(row - 1, i), at(row, i), at(row, i + 1)],
      );
    }
  });
  return { shape: 'mesh', vertices, triangles };
}

/**
 * Parts of a speaker looking along +Z from the origin, mm. Profiles run from the axis outward on
 * the front and back to the axis behind, so all faces look out.
 */
export function speakerParts(body: SpeakerBody, diaphragm: number): Part[] {
  const rim = body.flange / 2;
  const hole = Math.min(body.cutout / 2, rim * 0.98);
  const cone = Math.min(diaphragm / 2, hole * 0.97);
  const plate = Math.max(1.5, Math.min(5, rim * 0.08));
  const small = diaphragm <= 32;
  const surround = Math.max(1, (hole - cone) * 0.9);
  const front: Part = small
    ? {
        tone: 'speaker-dome',
        mesh: lathe(arc(cone, cone * 0.55, plate * 0.4)),
      }
    : {
        tone: 'speaker-cone',
        mesh: lathe([
          [0, -cone * 0.3],
          [cone * 0.14, -cone * 0.33],
          [cone * 0.3, -cone * 0.46],
          [cone * 0.34, -cone * 0.44],
          [cone * 0.7, -cone * 0.2],
          [cone, plate * 0.2],
        ]),
      };
  const ring: Part = {
    tone: 'rubber',
    mesh: lathe([
      [cone, plate * 0.2],
      [cone + surround * 0.25, plate * 0.2 + surround * 0.4],
      [cone + surround * 0.7, plate * 0.2 + surround * 0.42],
      [cone + surround, plate * 0.6],
    ]),
  };
  const flange: Part = {
    tone: 'speaker-rim',
    mesh: lathe([
      [cone + surround, plate * 0.6],
      [hole, plate],
      [rim * 0.98, plate],
      [rim, plate * 0.6],
      [rim, 0],
      [hole, -0.5],
    ]),
  };
  const deep = -Math.max(body.depth, 4);
  const basket: Part = {
    tone: 'speaker-basket',
    mesh: lathe([
      [hole, 0],
      [hole * 0.98, deep * 0.15],
      [hole * (small ? 0.95 : 0.62), deep * 0.62],
      [hole * (small ? 0.95 : 0.62), deep],
      [0, deep],
    ]),
  };
  return [front, ring, flange, basket];
}

function arc(radius: number, rise: number, from: number): [number, number][] {
  const steps = 7;
  return Array.from({ length: steps + 1 }, (_, k) => {
    const t = (Math.PI / 2) * (k / steps);
    return [radius * Math.sin(t), from + rise * Math.cos(t)] as [number, number];
  });
}
