/** Seats, wheel, console and all other bodies; occupants as calm see-through figures. */
import { type BufferGeometry, Group, Mesh } from 'three';
import type { CabinModel, Drawn, Obstacle, Vec3 } from '../../geometry';
import { inkGeometry } from '../meshes/ink';
import { shapeMesh } from '../meshes/shape-mesh';
import { type Part, solidGeometry } from '../meshes/solid';
import { meetShape } from '../pick/meet-shape';
import { nearestPass, type Pass } from '../pick/nearest-pass';
import type { Ray } from '../pick/ray';
import { type SurfaceCaster, type SurfaceHit, surfaceCaster } from '../pick/surface-caster';
import { type Bin, createBin } from './bin';
import { type Kit, LAYER } from './kit';

/** From here on, as for a scan, a tree of the drawn triangles is worth having. */
const MANY_TRIANGLES = 5000;

interface Body {
  obstacle: Obstacle;
  key: string;
  group: Group;
  contour: Mesh;
  /** The see-through figure of an occupant. */
  figure: Mesh | null;
  /** Hatch over a body that is in the way. */
  hatch: Mesh;
  geometry: BufferGeometry;
  bin: Bin;
  caster: SurfaceCaster;
}

export interface ObstaclesPart {
  group: Group;
  /** True when anything was drawn anew. */
  show(cabin: CabinModel): boolean;
  /** `hiddenHead`: the seat whose eyes we look through; its own head and trunk are left out. */
  dress(how: {
    occupants: boolean;
    hiddenHead: string | null;
    /** The seat in view: its occupant stands out among the others. */
    listener: string | null;
    blocking: ReadonlySet<string>;
    grazed: ReadonlySet<string>;
    selected: string | null;
    hovered: string | null;
  }): void;
  /** The nearest drawn body under a line of sight that `wanted` accepts. */
  under(
    ray: Ray,
    wanted: (obstacle: Obstacle) => boolean,
  ): (SurfaceHit & { obstacle: Obstacle }) | null;
  /** Solid bodies' geometries, people left out: what is shaded and what takes light away. */
  solids(): BufferGeometry[];
  /** Where a line first meets one body. */
  meet(id: string, ray: Ray, far: number): Vec3 | null;
  /** Where a line passes one body most narrowly. */
  pass(id: string, from: Vec3, to: Vec3): Pass | null;
  dispose(): void;
}

export function createObstaclesPart(kit: Kit): ObstaclesPart {
  const group = new Group();
  const bodies = new Map<string, Body>();
  const trimBin = createBin();
  const trim = new Mesh(undefined, kit.sheet);
  const trimInk = new Mesh(undefined, kit.ink);
  trimInk.renderOrder = LAYER.ink;
  for (const mesh of [trim, trimInk]) mesh.frustumCulled = false;
  group.add(trim, trimInk);
  let trimShown: readonly Drawn[] | null = null;

  function makeBody(obstacle: Obstacle, key: string): Body {
    const bin = createBin();
    const parts: Part[] = obstacle.drawn?.length
      ? obstacle.drawn.map(({ material, mesh }) => ({ tone: material, mesh }))
      : [{ tone: toneOf(obstacle), mesh: shapeMesh(obstacle.shape) }];
    const ghost = obstacle.occupant !== undefined;
    const solid = solidGeometry(parts, !ghost);
    const geometry = bin.keep(solid.geometry);
    const own = new Group();
    let figure: Mesh | null = null;
    const contour = new Mesh(geometry, ghost ? kit.quietContour : kit.contour);
    if (ghost) {
      const depth = new Mesh(geometry, kit.ghostDepth);
      depth.renderOrder = LAYER.ghostDepth;
      figure = new Mesh(geometry, kit.ghost);
      figure.renderOrder = LAYER.ghost;
      contour.renderOrder = LAYER.ghost;
      own.add(depth, figure);
    } else {
      own.add(new Mesh(geometry, kit.surface));
      const pen = { tone: 'ink', width: 0.9, strength: 0.6 } as const;
      const ink = new Mesh(
        bin.keep(inkGeometry(solid.edges.map((edge) => ({ ...edge, ...pen })))),
        kit.ink,
      );
      ink.renderOrder = LAYER.ink;
      ink.frustumCulled = false;
      own.add(ink);
    }
    const hatch = new Mesh(geometry, kit.blockedBody);
    hatch.renderOrder = LAYER.zone;
    hatch.visible = false;
    own.add(contour, hatch);
    return {
      obstacle,
      key,
      group: own,
      contour,
      figure,
      hatch,
      geometry,
      bin,
      caster: surfaceCaster(geometry, true),
    };
  }

  function drop(body: Body): void {
    group.remove(body.group);
    body.bin.empty();
  }

  return {
    group,
    show(cabin) {
      let changed = false;
      const gone = new Set(bodies.keys());
      for (const obstacle of cabin.obstacles) {
        gone.delete(obstacle.id);
        const known = bodies.get(obstacle.id);
        if (known?.obstacle === obstacle) continue;
        const key = keyOf(obstacle);
        if (known?.key === key) {
          known.obstacle = obstacle;
          continue;
        }
        changed = true;
        if (known) drop(known);
        const body = makeBody(obstacle, key);
        bodies.set(obstacle.id, body);
        group.add(body.group);
      }
      for (const id of gone) {
        changed = true;
        drop(bodies.get(id) as Body);
        bodies.delete(id);
      }
      if (trimShown !== cabin.trim) {
        trimShown = cabin.trim;
        trimBin.empty();
        const solid = solidGeometry(
          cabin.trim.map(({ material, mesh }) => ({ tone: material, mesh })),
        );
        trim.geometry = trimBin.keep(solid.geometry);
        const pen = { tone: 'ink', width: 0.8, strength: 0.5 } as const;
        trimInk.geometry = trimBin.keep(
          inkGeometry(solid.edges.map((edge) => ({ ...edge, ...pen }))),
        );
      }
      return changed;
    },
    dress({ occupants, hiddenHead, listener, blocking, grazed, selected, hovered }) {
      for (const { obstacle, group: own, contour, figure, hatch } of bodies.values()) {
        const { occupant } = obstacle;
        const inTheWay = blocking.has(obstacle.id);
        const self = occupant !== undefined && occupant.seat === hiddenHead;
        const near = grazed.has(obstacle.id);
        own.visible = occupant
          ? (occupants || inTheWay || near) && !(self && occupant.part !== 'legs')
          : true;
        hatch.visible = inTheWay;
        if (figure) {
          figure.material = occupant?.seat === listener ? kit.ghost : kit.ghostFaint;
        }
        const plain = occupant ? kit.quietContour : kit.contour;
        contour.material = inTheWay
          ? occupant
            ? kit.blockedFigure
            : kit.blockedContour
          : obstacle.id === selected || obstacle.id === hovered
            ? kit.accentContour
            : near
              ? occupant
                ? kit.nearFigure
                : kit.nearContour
              : plain;
      }
    },
    under(ray, wanted) {
      let best: (SurfaceHit & { obstacle: Obstacle }) | null = null;
      for (const { obstacle, caster, group: own } of bodies.values()) {
        if (!own.visible || !wanted(obstacle)) continue;
        const hit = caster.first(ray, best?.distance);
        if (hit) best = { ...hit, obstacle };
      }
      return best;
    },
    solids: () =>
      [...bodies.values()].flatMap(({ obstacle, geometry }) =>
        obstacle.occupant ? [] : [geometry],
      ),
    meet(id, ray, far) {
      const body = bodies.get(id);
      if (!body) return null;
      const { shape } = body.obstacle;
      const large = shape.shape === 'mesh' && shape.triangles.length > MANY_TRIANGLES;
      return large ? (body.caster.first(ray, far)?.point ?? null) : meetShape(shape, ray, far);
    },
    pass(id, from, to) {
      const body = bodies.get(id);
      return body ? nearestPass(from, to, body.obstacle.shape) : null;
    },
    dispose() {
      for (const body of bodies.values()) drop(body);
      bodies.clear();
      trimBin.empty();
    },
  };
}

function toneOf(obstacle: Obstacle): Part['tone'] {
  if (obstacle.occupant) return obstacle.occupant.part === 'head' ? 'skin' : 'cloth';
  if (obstacle.seat) return 'fabric';
  return obstacle.given ? 'paint' : 'dark-trim';
}

/** Equal keys, equal pictures: a slide of one seat leaves every other body as it is. */
function keyOf(obstacle: Obstacle): string {
  const { shape } = obstacle;
  const own = shape.shape === 'mesh' ? meshKey(shape.vertices) : JSON.stringify(shape);
  const drawn = obstacle.drawn?.map(({ material, mesh }) => material + meshKey(mesh.vertices));
  return `${own}|${drawn?.join() ?? ''}|${obstacle.occupant?.part ?? ''}|${obstacle.given}`;
}

function meshKey(vertices: readonly Vec3[]): string {
  let [x, y, z] = [0, 0, 0];
  vertices.forEach((v, i) => {
    // Weighted by place, so two corners that change places change the sum.
    const w = 1 + (i % 97) / 97;
    x += w * v[0];
    y += w * v[1];
    z += w * v[2];
  });
  return `${vertices.length}:${x}:${y}:${z}`;
}
