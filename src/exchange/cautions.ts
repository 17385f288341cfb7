/**
 * What must be read before anything is cut. One text for the page and for every file that leaves
 * it. The program knows none of the car's own documents: it says what to look up, never that a
 * spot is safe.
 */

import { isCabinPanel } from '../geometry';

export interface Caution {
  id: string;
  title: string;
  text: string;
  /** Panels it stands beside, by the start of their id; empty where it goes for every spot. */
  panels: readonly string[];
}

/** The one sentence that goes where there is room for no more. */
export const SHORT_CAUTION =
  'Starting values from geometry: check every spot against the vehicle maker’s documents before ' +
  'cutting, and every delay by measurement and by ear before driving.';

export const CAUTIONS: readonly Caution[] = [
  {
    id: 'maker-first',
    title: 'The maker’s documents come first',
    text:
      'Before a panel comes off, read the vehicle maker’s body repair and restraint documents for ' +
      'this very car. The spots, zones and depths shown here are typical values for a body style, ' +
      'not a survey of the car in front of you; where they differ, the car and its documents are right.',
    panels: [],
  },
  {
    id: 'airbags',
    title: 'Airbags and belts',
    text:
      'Curtain airbags unfold along the A-pillar and the roof edge, knee and front airbags out of ' +
      'the dash, others out of seats and doors. Mount nothing on, behind or in front of a cover ' +
      'they need, and change no such cover. Disconnect the battery and wait as the maker says; ' +
      'restraint work belongs to people trained and licensed for it.',
    panels: [
      'pillar',
      'b-pillar',
      'c-pillar',
      'roof',
      'dash-top',
      'dash-face',
      'dash-lower',
      'door',
      'rear-door',
      'seat-base',
      'd-pillar',
      'rear-quarter',
      'under-dash',
    ],
  },
  {
    id: 'sight',
    title: 'The view of the road',
    text:
      'A pod on a pillar, a mirror corner or the dash hides a part of the road, a mirror or a ' +
      'warning lamp. Sit in the seat and look before fixing it. Local vehicle rules limit what may ' +
      'stand in the view and in the wiped area of the windscreen; they decide, not this plan.',
    panels: ['pillar', 'mirror-corner', 'dash-top', 'dash-face', 'screen', 'side-glass'],
  },
  {
    id: 'pedals',
    title: 'Pedals, steering and feet',
    text:
      'Nothing may touch a pedal, the steering column, a shoe or the footrest over their full ' +
      'travel, now or after a fixing has worked loose. Try it with the heaviest shoes, the seat at ' +
      'both ends of its rails and the wheel at both locks.',
    panels: [
      'kick',
      'toe-board',
      'footrest',
      'floor',
      'sill',
      'dash-lower',
      'tunnel',
      'console',
      'under-dash',
    ],
  },
  {
    id: 'behind',
    title: 'What lies behind the panel',
    text:
      'Looms, fuel, brake and coolant lines, window glass, airbag sensors, and in electric and ' +
      'hybrid cars orange high-voltage cables run behind trim. Take the panel off and look before ' +
      'drilling. Leave orange cables and anything you cannot name alone.',
    panels: [
      'kick',
      'door',
      'rear-door',
      'floor',
      'sill',
      'tunnel',
      'toe-board',
      'parcel-shelf',
      'rear-quarter',
      'rear-wall',
    ],
  },
  {
    id: 'impact',
    title: 'Edges and fixings',
    text:
      'In a crash or at a sharp stop, heads and knees reach the pillars, the dash and the doors. ' +
      'Round every hard edge well, fix every pod and grille to structure rather than trim, and keep ' +
      'hard parts out of the reach of a head where there is a choice. Local rules on interior ' +
      'fittings apply.',
    panels: [
      'pillar',
      'b-pillar',
      'mirror-corner',
      'dash',
      'door',
      'rear-door',
      'roof',
      'kick',
      'c-pillar',
      'd-pillar',
      'under-dash',
    ],
  },
  {
    id: 'structure',
    title: 'Structure and water',
    text:
      'Cut trim, not body: pillars, sills, door beams and the floor carry crash loads. A hole in a ' +
      'door skin or its water sheet must be sealed again, and bare metal protected.',
    panels: [
      'pillar',
      'b-pillar',
      'door',
      'rear-door',
      'sill',
      'floor',
      'toe-board',
      'kick',
      'c-pillar',
      'd-pillar',
      'rear-quarter',
      'rear-wall',
    ],
  },
  {
    id: 'enclosures',
    title: 'Boxes in a footwell, on the floor or in a door',
    text:
      'A box must leave the pedals, the footrest, the seat rails and a way out of the car free, and ' +
      'be fixed so that it stays where it is in a crash. Make room with the box, not with the body: ' +
      'floor, sill and footwell metal is not cut or hammered, and drains, vents, window travel and ' +
      'the sensors of the restraints keep their place. Under the floor of an electric or hybrid car ' +
      'lies the high-voltage battery: drill nothing there.',
    panels: [
      'kick',
      'toe-board',
      'footrest',
      'footwell',
      'floor',
      'sill',
      'tunnel',
      'door',
      'under-dash',
    ],
  },
  {
    id: 'electrics',
    title: 'Wiring',
    text:
      'Fuse every supply at the battery for the wire it protects, pass wires through sheet metal in ' +
      'grommets, and follow the local electrical code and the maker’s notes on added loads. Work ' +
      'that the law keeps for licensed trades stays theirs.',
    panels: [],
  },
  {
    id: 'tune',
    title: 'Delays and gains',
    text:
      'These numbers come from geometry: the straight line to each seat, or the shortest way round ' +
      'what is in it. Crossovers, processors and the cabin add time and level of their own. Enter ' +
      'them at low volume, measure, then listen; never adjust while driving, and keep levels where ' +
      'traffic, sirens and passengers can be heard.',
    panels: [],
  },
];

/** "door" names "door-upper-left" and "door-lower-right". */
const stands = (panel: string, start: string): boolean =>
  panel === start || panel.startsWith(`${start}-`);

/**
 * The cautions to show beside a spot: those for every spot first, then those of its panel. All of
 * them where it is not known what is there: at a free point, on a panel of the plan's own, and on
 * one that no caution names.
 * @param panel the panel's id, or null for a free point
 */
export function cautionsFor(panel: string | null): readonly Caution[] {
  const named = CAUTIONS.filter(
    ({ panels }) =>
      panel !== null && isCabinPanel(panel) && panels.some((start) => stands(panel, start)),
  );
  return named.length === 0
    ? CAUTIONS
    : CAUTIONS.filter((one) => one.panels.length === 0 || named.includes(one));
}
