import type { MeshShape } from '../input';
import { along, radians, type Vec3 } from '../vector';
import { AROUND, ringMesh } from './ring-mesh';
import type { RingForm, RingInput, RingPlace } from './types';
import { ringFrame } from './wedge-ring';

/**
 * A ring as a closed mesh where it stands, mm, car axes.
 * @param around faces round it; left out: as many as the file to print it by has
 */
export function ringInCar(
  input: RingInput,
  place: RingPlace,
  { wedgeDeg }: RingForm,
  around: number = AROUND,
): MeshShape {
  const turn = radians(wedgeDeg);
  const mesh = ringMesh(input, place.standoff, Math.cos(turn), Math.sin(turn), around);
  const { x, y, z } = ringFrame(place);
  const { position } = place;
  return {
    ...mesh,
    vertices: mesh.vertices.map(
      (p): Vec3 => along(along(along(position, x, p[0]), y, p[1]), z, p[2]),
    ),
  };
}
