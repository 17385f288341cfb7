import type { Side } from '../input';
import type { Vec3 } from '../vector';
import type { Dimensions } from './dimensions';
import { frontHalfWidth } from './furniture/front-width';
import { leftHandDrivePatches, type PatchFinder } from './furniture/patches';
import { wheelPlace } from './furniture/steering';
import { pedalLayout } from './keep-clear/pedal-layout';
import { mirrorReference } from './mirror';
import type { Panel, ReferencePoint } from './model';
import { pointOnPatch } from './patch';

/** A corner or the middle of an edge of a panel: (u, v). */
type Place = readonly [panel: string, u: number, v: number];

/** On the centreline: id, name, place. Panels across the car run u left to right. */
const MIDDLE: readonly (readonly [string, string, Place])[] = [
  ['screen-base-centre', 'windscreen base, middle', ['screen', 0.5, 0]],
  ['screen-top-centre', 'windscreen top, middle', ['screen', 0.5, 1]],
  ['dash-edge-centre', 'dash top, rear edge, middle', ['dash-top-center', 0.5, 1]],
  ['console-rear', 'console, rear end, middle of the top', ['console-top', 0.5, 1]],
];

/** On the left side, to be mirrored: side panels run u rearward and v upward. */
const SIDED: readonly (readonly [string, string, Place])[] = [
  ['pillar-foot-left', 'left A-pillar foot, screen side', ['pillar-left', 0, 0]],
  ['pillar-top-left', 'left A-pillar top, screen side', ['pillar-left', 0, 1]],
  ['belt-corner-left', 'left belt line, front corner of the door glass', ['side-glass-left', 0, 0]],
  ['belt-rear-left', 'left belt line at the B-pillar', ['side-glass-left', 1, 0]],
  ['glass-top-rear-left', 'left door glass, upper rear corner', ['side-glass-left', 1, 1]],
  ['dash-end-left', 'dash top, rear edge, left end', ['dash-top-left', 1, 1]],
  ['kick-rear-left', 'left kick panel, rear top corner', ['kick-left', 1, 1]],
  ['sill-front-left', 'left sill top, front end', ['sill-left', 0, 1]],
  ['sill-end-left', 'left sill top, rear end', ['sill-left', 1, 1]],
  ['tunnel-front-left', 'tunnel, left side, top of its front end', ['tunnel-left', 0, 1]],
];

function fromPanels(find: PatchFinder): ReferencePoint[] {
  const points: ReferencePoint[] = [];
  const at = ([panel, u, v]: Place): Vec3 | null => {
    const patch = find(panel);
    return patch && pointOnPatch(patch, u, v);
  };
  for (const [id, name, place] of MIDDLE) {
    const point = at(place);
    if (point) points.push({ id, name, point });
  }
  for (const [id, name, place] of SIDED) {
    const point = at(place);
    if (!point) continue;
    const left = { id, name, point };
    points.push(left, mirrorReference(left));
  }
  return points;
}

/** Where a rail stands, as a share of the seat's half width. Typical value, from memory. */
const RAIL = 0.72;

/** The rails' bolts: they stay put while the seat slides. Places along the rail are typical. */
function railBolts(d: Dimensions): ReferencePoint[] {
  const y = -(d.seatOffset + RAIL * frontHalfWidth(d));
  const at = (x: number): Vec3 => [x, y, 20];
  const name = 'left seat, outer rail';
  const bolts: ReferencePoint[] = [
    { id: 'seat-rail-front-left', name: `${name}, front bolt`, point: at(d.seatReach - 320) },
    { id: 'seat-rail-rear-left', name: `${name}, rear bolt`, point: at(d.seatReach + 140) },
  ];
  return bolts.flatMap((b) => [b, mirrorReference(b)]);
}

/**
 * Points an installer can put a tape to, each with a name found in the car; mm, car axes. The
 * paired ones are mirror images. The accelerator heel point is the car's origin, at the pedal.
 */
export function buildReferences(
  dimensions: Dimensions,
  panels: readonly Panel[],
  wheelSide: Side,
): ReferencePoint[] {
  const find = leftHandDrivePatches(panels, wheelSide);
  const canonical: ReferencePoint[] = [
    ...fromPanels(find),
    ...railBolts(dimensions),
    {
      id: 'wheel-centre',
      name: 'steering wheel, middle of the rim',
      point: wheelPlace(dimensions).center,
    },
  ];
  const heelY = pedalLayout(dimensions, wheelSide).accelerator;
  return [
    ...(wheelSide === 'left' ? canonical : canonical.map(mirrorReference)),
    { id: 'heel', name: 'accelerator heel point on the carpet', point: [0, heelY, 0] },
  ];
}
