/** Sealed pockets: their airspace as hatched, outlined volumes, through whatever stands before them. */
import { Group, Mesh } from 'three';
import { type CabinModel, type MeshShape, type OptionInput, planPocket } from '../../geometry';
import { inkGeometry } from '../meshes/ink';
import { solidGeometry } from '../meshes/solid';
import { createBin } from './bin';
import { type Kit, LAYER } from './kit';

export interface PocketsPart {
  group: Group;
  /** Nothing where the option is not known; a pocket without an airspace is not drawn. */
  show(cabin: CabinModel, option: OptionInput | null, visible: boolean): void;
  /** How many are drawn. */
  shown(): number;
  dispose(): void;
}

const PEN = { tone: 'ink', width: 2, strength: 1 } as const;

export function createPocketsPart(kit: Kit): PocketsPart {
  const group = new Group();
  const bin = createBin();
  let last: {
    cabin: CabinModel;
    pockets: OptionInput['pockets'];
    speakers: OptionInput['speakers'];
  } | null = null;
  let count = 0;

  function draw(mesh: MeshShape): void {
    const solid = solidGeometry([{ tone: 'ink', mesh }]);
    const volume = new Mesh(bin.keep(solid.geometry), kit.pocket);
    volume.renderOrder = LAYER.zone;
    const edges = new Mesh(
      bin.keep(inkGeometry(solid.edges.map((edge) => ({ ...edge, ...PEN })))),
      kit.marks,
    );
    edges.renderOrder = LAYER.zone;
    edges.frustumCulled = false;
    group.add(volume, edges);
    count++;
  }

  return {
    group,
    show(cabin, option, visible) {
      group.visible = visible && option !== null;
      if (!group.visible || !option) return;
      const { pockets, speakers } = option;
      if (last?.cabin === cabin && last.pockets === pockets && last.speakers === speakers) return;
      last = { cabin, pockets, speakers };
      bin.empty();
      group.clear();
      count = 0;
      for (const pocket of pockets ?? []) {
        const answer = planPocket({ cabin, option }, pocket);
        if (answer.ok) draw(answer.pocket.mesh);
      }
    },
    shown: () => (group.visible ? count : 0),
    dispose: () => bin.empty(),
  };
}
