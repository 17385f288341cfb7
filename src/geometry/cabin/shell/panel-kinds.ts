/**
 * What every panel of the shell is: its words, its material, what lies behind it and what is
 * commonly mounted there. Depths (mm) and airspaces (litres) are typical values, from memory; the
 * installer measures the car.
 */

import type { Role } from '../../input';
import type { Material, Panel } from '../model';

/** Pressure reflection factors at middle and high frequencies. Typical values, from memory. */
export const REFLECTIVITY: Readonly<Record<Material, number>> = {
  glass: 0.95,
  'hard-trim': 0.85,
  'soft-trim': 0.6,
  carpet: 0.4,
  headliner: 0.5,
  metal: 0.95,
};

export interface PanelKind {
  words: string;
  material: Material;
  depth: number | null;
  airspace: number | null;
  roles: readonly Role[];
  mountable: boolean;
}

const fixed = (words: string, material: Material): PanelKind => ({
  words,
  material,
  depth: null,
  airspace: null,
  roles: [],
  mountable: false,
});
const mount = (
  words: string,
  material: Material,
  depth: number,
  airspace: number | null,
  ...roles: Role[]
): PanelKind => ({ words, material, depth, airspace, roles, mountable: true });

/** Keyed by id without its side. */
export const PANEL_KINDS = {
  screen: fixed('windscreen', 'glass'),
  roof: fixed('roof', 'headliner'),
  'roof-rear': fixed('rear part of the roof', 'headliner'),
  'roof-edge': mount('roof edge', 'headliner', 20, null, 'tweeter'),
  'roof-edge-rear': mount('rear roof edge', 'headliner', 20, null, 'tweeter', 'rear-fill'),
  'rear-glass': fixed('rear glass', 'glass'),
  'parcel-shelf': mount('parcel shelf', 'soft-trim', 90, 250, 'rear-fill', 'subwoofer'),
  pillar: mount('A-pillar', 'hard-trim', 25, 0.3, 'tweeter', 'midrange', 'wideband'),
  'mirror-corner': mount('mirror corner', 'hard-trim', 25, 0.2, 'tweeter', 'midrange'),
  'quarter-glass': fixed('quarter window', 'glass'),
  'side-glass': fixed('side glass', 'glass'),
  'rear-side-glass': fixed('rear side glass', 'glass'),
  'third-side-glass': fixed('third side window', 'glass'),
  'door-upper': mount('upper door card', 'soft-trim', 45, 25, 'tweeter', 'midrange', 'wideband'),
  'door-lower': mount('lower door card', 'hard-trim', 65, 30, 'midbass', 'midrange', 'wideband'),
  'door-edge-upper': fixed('door card beside the dash, upper part', 'soft-trim'),
  'door-edge-middle': fixed('door card beside the dash, middle part', 'soft-trim'),
  'door-edge-lower': fixed('door card beside the dash, lower part', 'hard-trim'),
  'b-pillar': mount('B-pillar', 'hard-trim', 30, 0.5, 'tweeter', 'rear-fill'),
  'b-pillar-waist': fixed('B-pillar below the belt line', 'hard-trim'),
  'b-pillar-foot': fixed('foot of the B-pillar', 'hard-trim'),
  'c-pillar': mount('C-pillar', 'hard-trim', 50, 3, 'tweeter', 'rear-fill'),
  'd-pillar': mount('D-pillar', 'hard-trim', 50, 3, 'tweeter', 'rear-fill'),
  'rear-door': mount('rear door card', 'soft-trim', 60, 20, 'rear-fill', 'midbass', 'wideband'),
  'rear-quarter': mount('side trim behind the doors', 'hard-trim', 90, 15, 'rear-fill', 'midbass'),
  'rear-wall': mount('wall behind the seats', 'carpet', 60, null, 'subwoofer', 'rear-fill'),
  sill: fixed('door sill', 'hard-trim'),
  'dash-top': mount('dash top', 'soft-trim', 60, 3, 'tweeter', 'midrange', 'wideband', 'centre'),
  'dash-roll': fixed('dash edge', 'soft-trim'),
  'dash-face': mount('dash face', 'hard-trim', 70, 3, 'tweeter', 'midrange', 'wideband', 'centre'),
  'dash-lower': mount('lower dash', 'hard-trim', 60, 3, 'midrange', 'midbass', 'wideband'),
  'dash-foot': fixed('foot of the dash centre', 'hard-trim'),
  'under-dash': mount('underside of the dash', 'hard-trim', 80, 4, 'midrange', 'midbass'),
  'footwell-roof': fixed('footwell roof', 'hard-trim'),
  'centre-side-front': fixed('footwell side under the dash', 'carpet'),
  'centre-side': fixed('side of the dash centre', 'hard-trim'),
  kick: mount('kick panel', 'hard-trim', 60, 4, 'midrange', 'midbass', 'wideband', 'tweeter'),
  'kick-upper': fixed('side trim above the kick panel', 'hard-trim'),
  'hinge-post': fixed('door hinge post', 'hard-trim'),
  'toe-board': fixed('toe board', 'carpet'),
  footrest: fixed('footrest', 'carpet'),
  'footwell-floor': fixed('footwell floor', 'carpet'),
  floor: mount('floor', 'carpet', 30, null, 'subwoofer'),
  'floor-rear': mount('floor ahead of the rear wall', 'carpet', 30, null, 'subwoofer'),
  tunnel: fixed('tunnel side', 'carpet'),
  'tunnel-top': fixed('tunnel top', 'carpet'),
  'tunnel-end': fixed('rear end of the tunnel', 'carpet'),
  'console-side': mount('console side', 'hard-trim', 50, 2, 'midrange', 'midbass'),
  'console-top': mount('console top', 'hard-trim', 60, 3, 'centre', 'wideband'),
  'console-end': mount('rear end of the console', 'hard-trim', 60, 4, 'rear-fill', 'subwoofer'),
  'seat-base': mount('front of the seat base', 'soft-trim', 80, 6, 'subwoofer', 'midbass'),
} as const satisfies Readonly<Record<string, PanelKind>>;

export type PanelKindId = keyof typeof PANEL_KINDS;

/** Whether an id is one the shell gives, on a side or not: a plan's own panel is called otherwise. */
export const isCabinPanel = (id: string): boolean =>
  Object.hasOwn(PANEL_KINDS, id.replace(/-(left|right|center)$/, ''));

/** Kinds that lie loose in the cabin: no part of its closed skin. */
export const LOOSE_KINDS: ReadonlySet<PanelKindId> = new Set<PanelKindId>(['seat-base']);

/** Everything of a panel but its surface. */
export function describePanel(
  kind: PanelKindId,
  suffix: string,
  side: string,
  doorThickness: number,
): Omit<Panel, 'patch'> {
  const k: PanelKind = PANEL_KINDS[kind];
  const inDoor = kind === 'door-upper' || kind === 'door-lower' || kind === 'rear-door';
  // The upper card lies nearer the glass than the lower one, whose depth was measured.
  const depth = inDoor ? Math.round(doorThickness * (kind === 'door-upper' ? 0.65 : 1)) : k.depth;
  return {
    id: suffix ? `${kind}-${suffix}` : kind,
    name: side ? `${side} ${k.words}` : k.words,
    mountable: k.mountable,
    material: k.material,
    reflectivity: REFLECTIVITY[k.material],
    depthBehind: depth,
    airspaceBehind: k.airspace,
    roles: k.roles,
    ofSkin: !LOOSE_KINDS.has(kind),
    given: false,
  };
}
