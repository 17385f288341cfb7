import type { Group } from 'three';
import { createBodyPart } from './body-part';
import { createHeadsPart } from './heads-part';
import { createImagePart } from './image-part';
import type { Kit } from './kit';
import { createLinesPart } from './lines-part';
import { createObstaclesPart } from './obstacles-part';
import { createPanelsPart } from './panels-part';
import { createReflectionsPart } from './reflections-part';
import { createSpeakersPart } from './speakers-part';
import { createZonesPart } from './zones-part';

/** Every part of the drawing, hung under the car's root. */
export function createParts(kit: Kit, root: Group) {
  const parts = {
    panels: createPanelsPart(kit),
    obstacles: createObstaclesPart(kit),
    zones: createZonesPart(kit),
    body: createBodyPart(kit),
    speakers: createSpeakersPart(kit),
    lines: createLinesPart(kit),
    reflections: createReflectionsPart(kit),
    image: createImagePart(kit),
    heads: createHeadsPart(kit),
  };
  for (const part of Object.values(parts)) root.add(part.group);
  return {
    ...parts,
    dispose() {
      for (const part of Object.values(parts)) part.dispose();
    },
  };
}
