/** Keep-clear zones: hatched, outlined volumes. */
import { Group, Mesh } from 'three';
import type { KeepClearZone, Vec3 } from '../../geometry';
import { inkGeometry } from '../meshes/ink';
import { shapeMesh } from '../meshes/shape-mesh';
import { solidGeometry } from '../meshes/solid';
import { createBin } from './bin';
import { type Kit, LAYER } from './kit';

export interface ZonesPart {
  group: Group;
  /**
   * All of them where `visible`, else only those of `hit`: what a speaker reaches into is drawn
   * whether or not zones are, and with a firmer pen. True when anything was drawn anew.
   */
  show(zones: readonly KeepClearZone[], visible: boolean, hit?: ReadonlySet<string>): boolean;
  /** Middle of each zone shown, for its label. */
  middles(): readonly { zone: KeepClearZone; middle: Vec3 }[];
  dispose(): void;
}

const NONE: ReadonlySet<string> = new Set();
const PEN = { tone: 'zone', width: 1.1, strength: 0.75 } as const;
const HIT_PEN = { tone: 'blocked', width: 2, strength: 1 } as const;

export function createZonesPart(kit: Kit): ZonesPart {
  const group = new Group();
  const bin = createBin();
  let shown: readonly KeepClearZone[] | null = null;
  let drawn = '';
  let middles: { zone: KeepClearZone; middle: Vec3 }[] = [];

  return {
    group,
    show(zones, visible, hit = NONE) {
      const before = group.visible;
      group.visible = visible || hit.size > 0;
      const key = `${visible}|${[...hit].join()}`;
      if (!group.visible || (zones === shown && key === drawn)) return group.visible !== before;
      shown = zones;
      drawn = key;
      bin.empty();
      group.clear();
      middles = [];
      for (const zone of visible ? zones : zones.filter(({ id }) => hit.has(id))) {
        const mesh = shapeMesh(zone.shape);
        const solid = solidGeometry([{ tone: 'zone', mesh }]);
        const volume = new Mesh(bin.keep(solid.geometry), kit.zone);
        volume.renderOrder = LAYER.zone;
        const pen = hit.has(zone.id) ? HIT_PEN : PEN;
        const edges = new Mesh(
          bin.keep(inkGeometry(solid.edges.map((edge) => ({ ...edge, ...pen })))),
          kit.bodyInk,
        );
        edges.renderOrder = LAYER.zone;
        edges.frustumCulled = false;
        group.add(volume, edges);
        middles.push({ zone, middle: middleOf(mesh.vertices) });
      }
      return true;
    },
    middles: () => (group.visible ? middles : []),
    dispose: () => bin.empty(),
  };
}

function middleOf(points: readonly Vec3[]): Vec3 {
  const mid = (k: 0 | 1 | 2) => {
    const values = points.map((p) => p[k]);
    return (Math.min(...values) + Math.max(...values)) / 2;
  };
  return [mid(0), mid(1), mid(2)];
}
