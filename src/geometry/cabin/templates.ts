/**
 * The body styles: one file each in vehicle-templates/, for left- and right-hand drive alike. Every
 * value in them is a typical value, from memory; measure the car.
 */
import cityCar from '../../../vehicle-templates/city-car.json' with { type: 'json' };
import compactHatch from '../../../vehicle-templates/compact-hatch.json' with { type: 'json' };
import compactSuv from '../../../vehicle-templates/compact-suv.json' with { type: 'json' };
import estate from '../../../vehicle-templates/estate.json' with { type: 'json' };
import largeSaloon from '../../../vehicle-templates/large-saloon.json' with { type: 'json' };
import largeSuv from '../../../vehicle-templates/large-suv.json' with { type: 'json' };
import midSizeSaloon from '../../../vehicle-templates/mid-size-saloon.json' with { type: 'json' };
import panelVan from '../../../vehicle-templates/panel-van.json' with { type: 'json' };
import pickup from '../../../vehicle-templates/pickup.json' with { type: 'json' };
import roadster from '../../../vehicle-templates/roadster.json' with { type: 'json' };
import smallHatch from '../../../vehicle-templates/small-hatch.json' with { type: 'json' };
import twoSeatCoupe from '../../../vehicle-templates/two-seat-coupe.json' with { type: 'json' };
import type { Dimensions } from './dimensions';

export type BodyStyle =
  | 'hatch'
  | 'saloon'
  | 'estate'
  | 'suv'
  | 'pickup'
  | 'coupe'
  | 'roadster'
  | 'van';

/** The car round the cabin, for drawing; mm, in the cabin's axes. */
export interface BodyData {
  style: BodyStyle;
  /** A window between the C-pillar and the rear glass. */
  thirdSideGlass: boolean;
  /** Over the doors, without mirrors. */
  width: number;
  /** Height of the road: negative, below the heel. */
  groundZ: number;
  tyreDiameter: number;
  frontAxleX: number;
  wheelbase: number;
  /** Foremost point of the body, and the height of the bonnet's leading edge. */
  noseX: number;
  noseHeight: number;
  /** Centreline outline behind the rear glass, [x, z] from its foot down to the lower bumper edge. */
  tail: readonly (readonly [number, number])[];
}

export interface TemplateData {
  id: string;
  name: string;
  rows: 1 | 2;
  /** True with a clutch pedal, and so a clutch foot and foot room for it. */
  manual: boolean;
  /** Where the values come from. */
  note: string;
  dimensions: Dimensions;
  body: BodyData;
}

// JSON carries no literal types; tests/geometry/cabin/dimensions.test.ts checks every file against
// the dimension table and the fields above.
const checkedByTest = (data: unknown) => data as TemplateData;

/** In the order they are offered: by size, then the special ones. */
export const TEMPLATES: readonly TemplateData[] = [
  cityCar,
  smallHatch,
  compactHatch,
  midSizeSaloon,
  estate,
  largeSaloon,
  compactSuv,
  largeSuv,
  pickup,
  twoSeatCoupe,
  roadster,
  panelVan,
].map(checkedByTest);

/** The template of that id, or `null` when there is none. */
export function getTemplate(id: string): TemplateData | null {
  return TEMPLATES.find((t) => t.id === id) ?? null;
}
