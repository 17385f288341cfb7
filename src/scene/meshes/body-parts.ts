import type { Obstacle } from '../../geometry';
import { shapeMesh } from './shape-mesh';
import type { Part } from './solid';

function toneOf(obstacle: Obstacle): Part['tone'] {
  if (obstacle.occupant) return obstacle.occupant.part === 'head' ? 'skin' : 'cloth';
  if (obstacle.seat) return 'fabric';
  return obstacle.given ? 'paint' : 'dark-trim';
}

/** What a body is drawn from: its own drawing, or its shape in the paint of its kind. */
export const bodyParts = (obstacle: Obstacle): Part[] =>
  obstacle.drawn?.length
    ? obstacle.drawn.map(({ material, mesh }) => ({ tone: material, mesh }))
    : [{ tone: toneOf(obstacle), mesh: shapeMesh(obstacle.shape) }];
