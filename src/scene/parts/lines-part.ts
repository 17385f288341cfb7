/** Straight lines from every speaker to the seat in view: free whole, blocked dashed. */
import { Group, Mesh } from 'three';
import {
  type Arrival,
  direction,
  distance,
  type PlacedSpeaker,
  sub,
  type Vec3,
} from '../../geometry';
import { inkGeometry, type Stroke, setStrokes } from '../meshes/ink';
import type { Ray } from '../pick/ray';
import { createBin } from './bin';
import { type Kit, LAYER } from './kit';

export interface ShownLine {
  speaker: string;
  from: Vec3;
  to: Vec3;
  arrival: Arrival;
  /** Where the line first meets what blocks it. */
  cross: Vec3 | null;
}

export interface LinesPart {
  group: Group;
  show(
    head: Vec3,
    arrivals: readonly Arrival[],
    placed: ReadonlyMap<string, PlacedSpeaker>,
    emphasis: { selected: string | null; hovered: string | null },
    meet: (id: string, ray: Ray, far: number) => Vec3 | null,
  ): void;
  shown(): readonly ShownLine[];
  dispose(): void;
}

const MOST_LINES = 64;

export function createLinesPart(kit: Kit): LinesPart {
  const group = new Group();
  const bin = createBin();
  const geometry = bin.keep(inkGeometry([], MOST_LINES));
  const hidden = new Mesh(geometry, kit.pathBehind);
  hidden.renderOrder = LAYER.hidden;
  const plain = new Mesh(geometry, kit.path);
  plain.renderOrder = LAYER.path;
  for (const mesh of [hidden, plain]) {
    mesh.frustumCulled = false;
    group.add(mesh);
  }
  let shown: ShownLine[] = [];

  return {
    group,
    show(head, arrivals, placed, { selected, hovered }, meet) {
      const strokes: Stroke[] = [];
      shown = [];
      for (const arrival of arrivals) {
        const from = placed.get(arrival.speaker)?.position;
        if (!from) continue;
        const blocked = arrival.line === 'blocked';
        const mine = arrival.speaker === selected || arrival.speaker === hovered;
        strokes.push({
          start: from,
          end: head,
          tone: blocked ? 'blocked' : 'free',
          width: mine ? 3 : 1.9,
          dash: blocked ? 7 : 0,
          strength: mine || !selected ? 1 : 0.6,
        });
        shown.push({
          speaker: arrival.speaker,
          from,
          to: head,
          arrival,
          cross: blocked ? firstMeeting(from, head, arrival.blockedBy, meet) : null,
        });
      }
      setStrokes(geometry, strokes);
    },
    shown: () => shown,
    dispose: () => bin.empty(),
  };
}

/** The nearest meeting with what the engine says is in the way; the middle if it is too thin. */
function firstMeeting(
  from: Vec3,
  to: Vec3,
  blockers: readonly string[],
  meet: (id: string, ray: Ray, far: number) => Vec3 | null,
): Vec3 {
  const reach = distance(from, to);
  const way = direction(sub(to, from));
  if (way) {
    for (const id of blockers) {
      const point = meet(id, { origin: from, direction: way }, reach);
      if (point) return point;
    }
  }
  return [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2, (from[2] + to[2]) / 2];
}
