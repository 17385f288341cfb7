/**
 * Where the map and the search ask whether a speaker fits: the one file that knows how. For now by
 * the panel's edges, the depth behind it, keep-clear zones and the speakers already placed.
 */
import type { CabinModel, KeepClearZone } from '../cabin/model';
import { patchPartials } from '../cabin/patch';
import type { Shape, SpeakerInput } from '../input';
import { boundsOf } from '../paths/segment-hits';
import { solidBodies } from '../paths/way-round/bodies';
import { isInside } from '../paths/way-round/inside';
import type { PlacedSpeaker } from '../result';
import { add, along, cross, direction, distance, length, scale, type Vec3 } from '../vector';

/** Why a speaker cannot stand at a spot. */
export interface Misfit {
  sentence: string;
  /** A keep-clear zone: no search may pass over it. */
  hard: boolean;
}

export interface Standing {
  speaker: SpeakerInput;
  placed: PlacedSpeaker;
}

/** Empty: it fits, as far as is known. */
export type Fitter = (speaker: SpeakerInput, placed: PlacedSpeaker) => Misfit[];

/** Made ready once for a cabin and the speakers that stay where they are; cheap for each spot. */
export type MakeFitter = (cabin: CabinModel, standing: readonly Standing[]) => Fitter;

/** How the body is felt out: rings of points, front to back. Fine enough for zones of 20 mm. */
const AROUND = 12;
const DEPTHS = [0, 0.25, 0.5, 0.75, 1] as const;

export const createSpotFitter: MakeFitter = (cabin, standing) => {
  const zones = cabin.keepClear.map((zone) => ({ zone, box: boxOf(zone.shape) }));
  const panels = new Map(cabin.panels.map((panel) => [panel.id, panel]));
  return (speaker, placed) => {
    const { mount, body } = speaker;
    const misfits: Misfit[] = [];
    const panel = mount && panels.get(mount.panel);
    if (mount && panel && body) {
      const { du, dv } = patchPartials(panel.patch, mount.u, mount.v);
      const room = Math.min(
        Math.min(mount.u, 1 - mount.u) * length(du),
        Math.min(mount.v, 1 - mount.v) * length(dv),
      );
      const over = body.flange / 2 - room;
      if (over > 0) misfits.push(soft(`${mm(over)} over the edge of the ${panel.name}`));
      const deep = body.depth - (mount.standoff ?? 0) - (panel.depthBehind ?? Infinity);
      if (deep > 0) misfits.push(soft(`${mm(deep)} too deep for the ${panel.name}`));
    }
    for (const other of standing) {
      const by = overlap({ speaker, placed }, other);
      if (by > 0) misfits.push(soft(`${mm(by)} into the speaker "${other.speaker.id}"`));
    }
    const points = bodyPoints(speaker, placed);
    for (const { zone, box } of zones)
      if (points.some((point) => mayHold(box, point) && holds(zone, point)))
        misfits.push({ sentence: `inside the ${zone.name}: not here`, hard: true });
    return misfits;
  };
};

/** How far two speakers' flanges reach into each other, mm; 0 or less where they do not. */
export function overlap(a: Standing, b: Standing): number {
  const sizes = (a.speaker.body?.flange ?? 0) + (b.speaker.body?.flange ?? 0);
  return sizes / 2 - distance(a.placed.position, b.placed.position);
}

const soft = (sentence: string): Misfit => ({ sentence, hard: false });

/** Rounded up: a misfit of a hair is not "0 mm". */
export const mm = (by: number): string => `${Math.ceil(by)} mm`;

type Box = readonly [low: Vec3, high: Vec3];

function boxOf(shape: Shape): Box {
  if (shape.shape !== 'mesh') return boundsOf(shape);
  const at = (pick: (...all: number[]) => number, k: 0 | 1 | 2, start: number) =>
    shape.vertices.reduce((most, v) => pick(most, v[k]), start);
  return [
    [at(Math.min, 0, Infinity), at(Math.min, 1, Infinity), at(Math.min, 2, Infinity)],
    [at(Math.max, 0, -Infinity), at(Math.max, 1, -Infinity), at(Math.max, 2, -Infinity)],
  ];
}

const mayHold = ([low, high]: Box, p: Vec3): boolean =>
  p[0] >= low[0] &&
  p[0] <= high[0] &&
  p[1] >= low[1] &&
  p[1] <= high[1] &&
  p[2] >= low[2] &&
  p[2] <= high[2];

const holds = ({ id, shape }: KeepClearZone, p: Vec3): boolean =>
  isInside(shape, solidBodies(id, shape), p);

function bodyPoints({ body }: SpeakerInput, { position, normal, axis }: PlacedSpeaker): Vec3[] {
  const n = normal ?? axis;
  if (!n || !body) return [position];
  const a = direction(cross(n, Math.abs(n[2]) < 0.9 ? [0, 0, 1] : [1, 0, 0])) as Vec3;
  const b = cross(n, a);
  const points: Vec3[] = [];
  for (const part of DEPTHS) {
    const centre = along(position, n, -part * body.depth);
    const radius = (part === 0 ? body.flange : body.cutout) / 2;
    points.push(centre);
    for (let i = 0; i < AROUND; i++) {
      const t = (2 * Math.PI * i) / AROUND;
      points.push(add(centre, add(scale(a, Math.cos(t) * radius), scale(b, Math.sin(t) * radius))));
    }
  }
  return points;
}
