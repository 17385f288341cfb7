/** Seats, wheel, console and all other bodies; occupants as calm see-through figures. */
import { Group, Mesh } from 'three';
import { add, type CabinModel, type Drawn, type Obstacle, sub, type Vec3 } from '../../geometry';
import { bodyParts } from '../meshes/body-parts';
import { inkGeometry } from '../meshes/ink';
import { slideBetween } from '../meshes/slide-between';
import { type Part, type Solid, solidGeometry } from '../meshes/solid';
import { meetShape } from '../pick/meet-shape';
import { nearestPass, type Pass } from '../pick/nearest-pass';
import type { Ray } from '../pick/ray';
import { type SurfaceCaster, type SurfaceHit, surfaceCaster } from '../pick/surface-caster';
import type { Shaded } from '../shading/openness';
import { type Bin, createBin } from './bin';
import { type Kit, LAYER } from './kit';

const ORIGIN: Vec3 = [0, 0, 0];

/** From here on, as for a scan, a tree of the drawn triangles is worth having. */
const MANY_TRIANGLES = 5000;

interface Body {
  obstacle: Obstacle;
  /** What the geometry was made from, and how far it has been slid since. */
  basis: readonly Part[];
  at: Vec3;
  solid: Solid;
  group: Group;
  contour: Mesh;
  /** The see-through figure of an occupant. */
  figure: Mesh | null;
  /** Hatch over a body that is in the way. */
  hatch: Mesh;
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
  solids(): Shaded[];
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

  function makeBody(obstacle: Obstacle, parts: readonly Part[]): Body {
    const bin = createBin();
    const ghost = obstacle.occupant !== undefined;
    const solid = solidGeometry(parts, !ghost);
    const geometry = bin.keep(solid.geometry);
    const own = new Group();
    own.matrixAutoUpdate = false;
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
      basis: parts,
      at: ORIGIN,
      solid,
      group: own,
      contour,
      figure,
      hatch,
      bin,
      caster: surfaceCaster(geometry, true),
    };
  }

  /**
   * Takes a body over to the obstacle's new place without making it anew: what only slid is slid,
   * a figure's limbs are bent in place. False where neither will do.
   */
  function follow(body: Body, obstacle: Obstacle, parts: readonly Part[]): boolean {
    if (body.obstacle.occupant?.part !== obstacle.occupant?.part) return false;
    const by = slideBetween(body.basis, parts);
    // Edges of others were found once and would not bend along.
    if (!by && (!obstacle.occupant || !body.solid.reshape(parts))) return false;
    if (!by) {
      body.basis = parts;
      body.caster = surfaceCaster(body.solid.geometry, true);
    }
    body.obstacle = obstacle;
    body.at = by ?? ORIGIN;
    body.group.matrix.makeTranslation(...body.at);
    body.group.matrixWorldNeedsUpdate = true;
    return true;
  }

  /** The first drawn triangle of a body on a line of sight. */
  function cast({ caster, at }: Body, ray: Ray, far?: number): SurfaceHit | null {
    const hit = caster.first({ ...ray, origin: sub(ray.origin, at) }, far);
    return hit && { ...hit, point: add(hit.point, at) };
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
        const parts = bodyParts(obstacle);
        const stood = known?.at;
        if (known && follow(known, obstacle, parts)) {
          // People cast no shade, so where they are changes nothing to be shaded.
          if (!obstacle.occupant && !samePoint(known.at, stood)) changed = true;
          continue;
        }
        changed = true;
        if (known) drop(known);
        const body = makeBody(obstacle, parts);
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
      for (const body of bodies.values()) {
        const { obstacle } = body;
        if (!body.group.visible || !wanted(obstacle)) continue;
        const hit = cast(body, ray, best?.distance);
        if (hit) best = { ...hit, obstacle };
      }
      return best;
    },
    solids: () =>
      [...bodies.values()].flatMap(({ obstacle, solid, at }) =>
        obstacle.occupant ? [] : [{ geometry: solid.geometry, at }],
      ),
    meet(id, ray, far) {
      const body = bodies.get(id);
      if (!body) return null;
      const { shape } = body.obstacle;
      const large = shape.shape === 'mesh' && shape.triangles.length > MANY_TRIANGLES;
      return large ? (cast(body, ray, far)?.point ?? null) : meetShape(shape, ray, far);
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

const samePoint = (a: Vec3, b: Vec3 | undefined): boolean =>
  b !== undefined && a[0] === b[0] && a[1] === b[1] && a[2] === b[2];
