import { Group } from 'three';
import { createBodyPart } from './body-part';
import { createHeadsPart } from './heads-part';
import type { Kit } from './kit';
import { createMapPart } from './map-part';
import { createObstaclesPart } from './obstacles-part';
import { createPanelsPart } from './panels-part';
import { createSpotMarksPart } from './spot-marks-part';
import { createZonesPart } from './zones-part';

/** Every part of the drawing but the options themselves, hung under the car's root. */
export function createParts(kit: Kit, root: Group) {
  /** The car, which every option drawn shares. */
  const car = {
    panels: createPanelsPart(kit),
    obstacles: createObstaclesPart(kit),
    zones: createZonesPart(kit),
    body: createBodyPart(kit),
    heads: createHeadsPart(kit),
  };
  /** What is said of the option on the board alone: not seen where another is drawn beside it. */
  const own = { map: createMapPart(kit), spotMarks: createSpotMarksPart(kit) };
  const onBoard = new Group();
  for (const part of Object.values(car)) root.add(part.group);
  for (const part of Object.values<{ group: Group }>(own)) onBoard.add(part.group);
  root.add(onBoard);
  return {
    ...car,
    ...own,
    onBoard,
    dispose() {
      for (const part of Object.values({ ...car, ...own })) part.dispose();
    },
  };
}
