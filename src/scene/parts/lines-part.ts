/** The ways from every speaker to the seat in view. */
import { Group } from 'three';
import {
  type Arrival,
  direction,
  distance,
  mix,
  type PlacedSpeaker,
  sub,
  type Vec3,
} from '../../geometry';
import type { Stroke } from '../meshes/ink';
import type { Pass } from '../pick/nearest-pass';
import type { Ray } from '../pick/ray';
import { type Kit, LAYER } from './kit';
import { strokeSheet } from './stroke-sheet';
import { bendsOf, wayStrokes } from './way-strokes';

export interface ShownLine {
  speaker: string;
  /** As it is drawn: speaker, bends, head. */
  way: readonly Vec3[];
  arrival: Arrival;
  /** Where the straight line first meets what blocks it. */
  cross: Vec3 | null;
  /** Where the way bends, once for each body. */
  bends: readonly Vec3[];
  /** Where the line of the speaker looked at passes most narrowly. */
  pass: Pass | null;
}

/** What lines ask of the bodies and panels drawn. */
export interface Surroundings {
  /** Where a line first meets a panel or body. */
  meet(id: string, ray: Ray, far: number): Vec3 | null;
  /** Where a line passes a panel or body most narrowly. */
  pass(id: string, from: Vec3, to: Vec3): Pass | null;
}

export interface Emphasis {
  selected: string | null;
  hovered: string | null;
  /** Something else is drawn over the lines. */
  underneath: boolean;
}

export interface LinesPart {
  group: Group;
  show(
    head: Vec3,
    arrivals: readonly Arrival[],
    placed: ReadonlyMap<string, PlacedSpeaker>,
    emphasis: Emphasis,
    around: Surroundings,
  ): void;
  shown(): readonly ShownLine[];
  dispose(): void;
}

/** What was worked out for an arrival stays true as long as it is the same arrival. */
interface Worked {
  cross: Vec3 | null;
  bends: readonly Vec3[];
  pass?: Pass | null;
}

export function createLinesPart(kit: Kit): LinesPart {
  const group = new Group();
  const sheet = strokeSheet([
    [kit.pathBehind, LAYER.hidden],
    [kit.path, LAYER.path],
  ]);
  group.add(...sheet.meshes);
  let shown: ShownLine[] = [];
  const worked = new WeakMap<Arrival, Worked>();

  function workOut(arrival: Arrival, from: Vec3, to: Vec3, mine: boolean, around: Surroundings) {
    let known = worked.get(arrival);
    if (!known) {
      const blocked = arrival.line === 'blocked';
      known = {
        cross: blocked ? firstMeeting(from, to, arrival.blockedBy, around) : null,
        bends: blocked ? bendsOf(arrival.way) : [],
      };
      worked.set(arrival, known);
    }
    // Only for the line looked at: it asks every edge of a body.
    if (mine && known.pass === undefined) {
      const [nearest] = arrival.grazedBy;
      const grazing = arrival.line === 'grazing' && nearest !== undefined;
      known.pass = grazing ? around.pass(nearest, from, to) : null;
    }
    return known;
  }

  return {
    group,
    show(head, arrivals, placed, { selected, hovered, underneath }, around) {
      const quiet = selected !== null || underneath;
      const strokes: Stroke[] = [];
      shown = [];
      for (const arrival of arrivals) {
        const from = placed.get(arrival.speaker)?.position;
        if (!from) continue;
        const mine = arrival.speaker === selected || arrival.speaker === hovered;
        const { cross, bends, pass } = workOut(arrival, from, head, mine, around);
        const near = mine ? (pass ?? null) : null;
        strokes.push(...wayStrokes(from, head, arrival, near, { mine, quiet }));
        const way =
          arrival.line === 'blocked' && arrival.way.length > 2 ? arrival.way : [from, head];
        shown.push({ speaker: arrival.speaker, way, arrival, cross, bends, pass: near });
      }
      sheet.draw(strokes);
    },
    shown: () => shown,
    dispose: () => sheet.dispose(),
  };
}

/** The nearest meeting with what the engine says is in the way; the middle if it is too thin. */
function firstMeeting(
  from: Vec3,
  to: Vec3,
  blockers: readonly string[],
  { meet }: Surroundings,
): Vec3 {
  const reach = distance(from, to);
  const way = direction(sub(to, from));
  if (way) {
    for (const id of blockers) {
      const point = meet(id, { origin: from, direction: way }, reach);
      if (point) return point;
    }
  }
  return mix(from, to, 0.5);
}
