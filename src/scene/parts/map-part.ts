/** A map of numbers painted on the panels, over their own surfaces. */
import { BufferAttribute, type DataTexture, Group, Mesh, type Vector2 } from 'three';
import { type Panel, patchNormal, pointOnPatch, type SpotMap, type Vec3 } from '../../geometry';
import type { PaintedMap } from '../../store';
import { fillInPlace, type Layout, layOut } from '../map/atlas';
import { isoPlaces } from '../map/iso-places';
import { placeOfSpot } from '../map/spot-place';
import { panelGeometry } from '../meshes/panel-mesh';
import { atlasTexture, type MapUniforms, MOST_LEVELS } from '../shading/map-material';
import { createBin } from './bin';
import type { Kit } from './kit';

/** A line of equal value may carry its number here. */
export interface ShownLevel {
  panel: string;
  point: Vec3;
  normal: Vec3;
  level: number;
}

export interface ShownMap {
  painted: PaintedMap;
  levels: readonly ShownLevel[];
  /** The spot pointed at. */
  at: { point: Vec3; normal: Vec3 } | null;
}

export interface MapPart {
  group: Group;
  /** Paints, repaints or, with `null`, takes the paint off and gives its memory back. */
  show(painted: PaintedMap | null, panels: readonly Panel[]): void;
  shown(): ShownMap | null;
  dispose(): void;
}

export function createMapPart(kit: Kit): MapPart {
  const group = new Group();
  const bin = createBin();
  const mesh = new Mesh(undefined, kit.map);
  mesh.frustumCulled = false;
  group.add(mesh);
  const uniforms = kit.map.uniforms as unknown as MapUniforms;
  let texture: DataTexture | null = null;
  let layout: Layout | null = null;
  let laidFor: { of: SpotMap['panels']; panels: readonly Panel[] } | null = null;
  let drawn: PaintedMap | null = null;
  let shown: ShownMap | null = null;

  function clear(): void {
    group.visible = false;
    bin.empty();
    texture?.dispose();
    texture = null;
    uniforms.uAtlas.value = null;
    layout = null;
    laidFor = null;
    drawn = null;
    shown = null;
  }

  function lay(painted: PaintedMap, panels: readonly Panel[]): Layout {
    if (layout && laidFor?.panels === panels && sameGrids(laidFor.of, painted.map.panels))
      return layout;
    clear();
    layout = layOut(painted.map.panels);
    laidFor = { of: painted.map.panels, panels };
    texture = atlasTexture(layout.width, layout.height);
    uniforms.uAtlas.value = texture;
    mesh.geometry = bin.keep(plotted(panels, layout));
    return layout;
  }

  return {
    group,
    show(painted, panels) {
      if (!painted) {
        if (drawn) clear();
        return;
      }
      const stands = drawn === painted && laidFor?.panels === panels;
      if (stands) return;
      const onto = lay(painted, panels);
      const repaint =
        drawn?.map !== painted.map ||
        drawn.quantity !== painted.quantity ||
        drawn.levels !== painted.levels;
      if (repaint && texture) {
        fillInPlace(texture.image.data as unknown as Float32Array, onto, painted);
        texture.needsUpdate = true;
        (uniforms.uRange.value as Vector2).set(...painted.range);
        const levels = painted.levels.slice(0, MOST_LEVELS);
        levels.forEach((level, i) => {
          uniforms.uLevels.value[i] = level;
        });
        uniforms.uLevelCount.value = levels.length;
      }
      shown = {
        painted,
        levels: repaint || !shown ? levelsOn(painted, panels) : shown.levels,
        at: painted.at === null ? null : placeOfSpot(painted.map, panels, painted.at),
      };
      drawn = painted;
      group.visible = true;
    },
    shown: () => shown,
    dispose: clear,
  };
}

const sameGrids = (a: SpotMap['panels'], b: SpotMap['panels']): boolean =>
  a === b ||
  (a.length === b.length &&
    a.every((grid, i) => {
      const other = b[i];
      return (
        grid.panel === other?.panel && grid.columns === other.columns && grid.rows === other.rows
      );
    }));

/** The panels of the map, each corner knowing where its panel's numbers lie. */
function plotted(panels: readonly Panel[], { plots }: Layout) {
  const byId = new Map(plots.map((plot) => [plot.panel, plot]));
  const painted = panels.filter(({ id }) => byId.has(id));
  const { geometry, owner } = panelGeometry(painted);
  const index = geometry.getIndex();
  const data = new Float32Array(4 * geometry.getAttribute('position').count);
  owner.forEach((p, triangle) => {
    const plot = byId.get((painted[p] as Panel).id);
    if (!plot || !index) return;
    for (const k of [0, 1, 2])
      data.set([plot.left, plot.top, plot.columns, plot.rows], 4 * index.getX(3 * triangle + k));
  });
  geometry.setAttribute('plot', new BufferAttribute(data, 4));
  return geometry;
}

function levelsOn(painted: PaintedMap, panels: readonly Panel[]): ShownLevel[] {
  const byId = new Map(panels.map((panel) => [panel.id, panel]));
  return isoPlaces(painted).flatMap(({ panel: id, u, v, level }): ShownLevel[] => {
    const panel = byId.get(id);
    if (!panel) return [];
    const { patch } = panel;
    return [
      { panel: id, point: pointOnPatch(patch, u, v), normal: patchNormal(patch, u, v), level },
    ];
  });
}
