/** The rear of the cabin. Ranges: common practice, no source. */
import { rows } from './types';

export const REAR = rows([
  {
    id: 'secondRowDistance',
    group: 'rear',
    label: 'Rear seat behind front',
    unit: 'mm',
    min: 550,
    max: 1200,
    code: 'L50',
    measure:
      'Level from the hip joint of a person in the front seat rearward to that of one in the rear seat.',
    moves: 'rear seats and heads',
  },
  {
    id: 'rearSeatOffset',
    group: 'rear',
    label: 'Rear seat from centreline',
    unit: 'mm',
    min: 200,
    max: 560,
    measure: 'Half the distance between the middles of the two outer rear seats.',
    moves: 'rear seats and heads',
  },
  {
    id: 'rearSeatHeight',
    group: 'rear',
    label: 'Rear seat height',
    unit: 'mm',
    min: 150,
    max: 480,
    measure:
      'From the rear floor carpet straight up to the hip joint of a person seated in the rear.',
    moves: 'rear seats and heads',
  },
  {
    id: 'bPillarX',
    group: 'rear',
    label: 'B-pillar from heel',
    unit: 'mm',
    min: 700,
    max: 1600,
    measure:
      'Level from the accelerator heel rearward to the front edge of the B-pillar trim at belt height.',
    moves: 'B-pillars, front and rear doors',
  },
  {
    id: 'cPillarWidth',
    group: 'rear',
    label: 'C-pillar width',
    unit: 'mm',
    min: 50,
    max: 700,
    measure: 'Along the belt line across the rearmost pillar trim beside the rear seat.',
    moves: 'C-pillars, rear side glass',
  },
  {
    id: 'rearGlassSlope',
    group: 'rear',
    label: 'Rear glass rake',
    unit: 'deg',
    min: 0,
    max: 80,
    measure:
      'With an angle finder on the inside of the rear glass at the centreline, from vertical.',
    moves: 'rear glass, rear end of the roof',
  },
  {
    id: 'shelfHeight',
    group: 'rear',
    label: 'Shelf height',
    unit: 'mm',
    min: 450,
    max: 1250,
    measure:
      'Straight up from heel-carpet level to the foot of the rear glass: the parcel shelf, load cover or sill of the rear window.',
    moves: 'parcel shelf, rear glass, C-pillars',
  },
  {
    id: 'tailX',
    group: 'rear',
    label: 'Rear glass from heel',
    unit: 'mm',
    min: 900,
    max: 4000,
    measure:
      'Level on the centreline from the accelerator heel rearward to the foot of the rear glass.',
    moves: 'rear glass, parcel shelf, C-pillars',
  },
]);
