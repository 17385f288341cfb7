import { describe, expect, it } from 'vitest';
import type { MeshShape, Obstacle } from '../../../src/geometry';
import { buildCabin } from '../../../src/geometry';
import { headRestraint } from '../../../src/geometry/cabin/furniture/head-restraint';
import { frontSeat } from '../../../src/geometry/cabin/furniture/seat-body';

const cabinWith = (slide: number) => {
  const answer = buildCabin({
    cabin: { template: 'estate', wheelSide: 'left' },
    seats: [{ id: 'front-left', slide, reclineDeg: 4 }],
  });
  if (!answer.ok) throw new Error(answer.error.message);
  return answer.cabin;
};
const meshes = (o: Obstacle): MeshShape[] => [
  ...(o.shape.shape === 'mesh' ? [o.shape] : []),
  ...(o.drawn ?? []).map(({ mesh }) => mesh),
];

describe('a seat slid along its rails', () => {
  it.each([0, -37, 61.5])('by %s mm is the seat that would be built there', (slide) => {
    const cabin = cabinWith(slide);
    const [seat] = cabin.seats;
    if (!seat?.posture) throw new Error('nobody sits');
    const built = frontSeat(seat, seat.posture, cabin.dimensions as never);
    const there = [built.obstacle, headRestraint(seat.id, seat.name, built.back, seat.head)];
    for (const wanted of there) {
      const found = cabin.obstacles.find(({ id }) => id === wanted.id);
      if (!found) throw new Error(`no ${wanted.id}`);
      const [a, b] = [meshes(found), meshes(wanted)];
      expect(a.length).toBe(b.length);
      expect(a.length).toBeGreaterThan(1);
      a.forEach((mesh, m) => {
        expect(mesh.triangles).toEqual(b[m]?.triangles);
        mesh.vertices.forEach((p, i) => {
          const q = b[m]?.vertices[i];
          if (!q) throw new Error('a vertex is missing');
          // A body at its place and one slid there may differ by the rounding of its posture.
          expect(Math.max(...p.map((x, k) => Math.abs(x - (q[k] as number))))).toBeLessThan(2e-6);
        });
      });
    }
  });
});
