/** Windscreen, roof and sides. Ranges: common practice, no source. */
import { rows } from './types';

export const GLASS_AND_SIDES = rows([
  {
    id: 'cowlX',
    group: 'windscreen and roof',
    label: 'Screen base from heel',
    unit: 'mm',
    min: -500,
    max: 250,
    measure:
      'Level on the centreline from the accelerator heel to where the glass meets the dash: negative when the screen base is ahead of the heel.',
    moves: 'windscreen, dash top',
  },
  {
    id: 'cowlHeight',
    group: 'windscreen and roof',
    label: 'Screen base height',
    unit: 'mm',
    min: 450,
    max: 1100,
    measure:
      'Straight up from heel-carpet level to where the glass meets the dash, on the centreline.',
    moves: 'windscreen, dash top',
  },
  {
    id: 'screenSlope',
    group: 'windscreen and roof',
    label: 'Windscreen rake',
    unit: 'deg',
    min: 15,
    max: 75,
    code: 'A121',
    measure: 'With an angle finder on the inside of the glass at the centreline, from vertical.',
    moves: 'windscreen, A-pillars, front of the roof',
  },
  {
    id: 'headerX',
    group: 'windscreen and roof',
    label: 'Screen top from heel',
    unit: 'mm',
    min: 150,
    max: 1000,
    measure:
      'Level on the centreline from the accelerator heel rearward to where the glass meets the headliner.',
    moves: 'windscreen, A-pillars, front of the roof',
  },
  {
    id: 'roofHeight',
    group: 'windscreen and roof',
    label: 'Roof height at the rear',
    unit: 'mm',
    min: 800,
    max: 1900,
    measure:
      'Straight up from heel-carpet level to the headliner on the centreline, just ahead of the rear glass.',
    moves: 'rear of the roof, rear glass',
  },
  {
    id: 'roofCrown',
    group: 'windscreen and roof',
    label: 'Roof crown',
    unit: 'mm',
    min: 5,
    max: 120,
    measure:
      'Stretch a string across the car from one roof edge to the other above the front seats and measure up to the headliner in the middle.',
    moves: 'roof, roof edges',
  },
  {
    id: 'screenBow',
    group: 'windscreen and roof',
    label: 'Windscreen bow',
    unit: 'mm',
    min: 5,
    max: 220,
    measure:
      'Stretch a string across the foot of the windscreen from pillar to pillar and measure forward from its middle to the glass.',
    moves: 'windscreen corners, A-pillars',
  },
  {
    id: 'beltHeight',
    group: 'sides',
    label: 'Belt line height',
    unit: 'mm',
    min: 450,
    max: 1100,
    code: 'H25',
    measure:
      'Straight up from heel-carpet level to the top edge of the door card at the window, beside the hip joint.',
    moves: 'doors, side glass',
  },
  {
    id: 'sideGlassTumblehome',
    group: 'sides',
    label: 'Side glass lean',
    unit: 'deg',
    min: 0,
    max: 35,
    code: 'A122',
    measure: 'With an angle finder on the front side glass, from vertical, leaning inward.',
    moves: 'side glass, pillars, roof edge',
  },
  {
    id: 'pillarWidth',
    group: 'sides',
    label: 'A-pillar width',
    unit: 'mm',
    min: 50,
    max: 220,
    measure:
      'Across the A-pillar trim at half its height, square to its length, from glass edge to door seal.',
    moves: 'A-pillars, side glass',
  },
  {
    id: 'mirrorCornerLength',
    group: 'sides',
    label: 'Mirror corner length',
    unit: 'mm',
    min: 40,
    max: 300,
    measure:
      'Along the belt line from the foot of the A-pillar to the rear edge of the mirror corner.',
    moves: 'mirror corners, side glass',
  },
  {
    id: 'doorLength',
    group: 'sides',
    label: 'Front door length',
    unit: 'mm',
    min: 600,
    max: 1500,
    measure:
      'Along the front door opening at sill height, from its front edge to the front edge of the B-pillar.',
    moves: 'front edge of the door',
  },
  {
    id: 'doorThickness',
    group: 'sides',
    label: 'Depth behind the door card',
    unit: 'mm',
    min: 20,
    max: 200,
    measure:
      'With the window down, from the face of the door card to the glass at the height of the speaker opening.',
    moves: 'space behind door speakers',
  },
]);
