/** Strokes that change from frame to frame: refilled in place, given more room when they need it. */
import { Mesh, type ShaderMaterial } from 'three';
import { inkGeometry, type Stroke, setStrokes } from '../meshes/ink';
import { createBin } from './bin';

export interface StrokeSheet {
  /** One for each pen, all of the same strokes. */
  meshes: readonly Mesh[];
  draw(strokes: readonly Stroke[]): void;
  dispose(): void;
}

/** Room for this many strokes to begin with; it doubles, so that a drag hardly ever asks for more. */
const ROOM = 64;

/** @param pens a material, and where its strokes lie among the layers of the sheet */
export function strokeSheet(pens: readonly (readonly [ShaderMaterial, number])[]): StrokeSheet {
  const bin = createBin();
  let room = ROOM;
  let geometry = bin.keep(inkGeometry([], room));
  const meshes = pens.map(([material, layer]) => {
    const mesh = new Mesh(geometry, material);
    mesh.renderOrder = layer;
    mesh.frustumCulled = false;
    return mesh;
  });
  return {
    meshes,
    draw(strokes) {
      if (strokes.length > room) {
        while (room < strokes.length) room *= 2;
        bin.drop(geometry);
        geometry = bin.keep(inkGeometry([], room));
        for (const mesh of meshes) mesh.geometry = geometry;
      }
      setStrokes(geometry, strokes);
      for (const mesh of meshes) mesh.visible = strokes.length > 0;
    },
    dispose: () => bin.empty(),
  };
}
