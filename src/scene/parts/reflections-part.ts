/** What the panels throw back: speaker, point on the panel, head. */
import { Group } from 'three';
import type { Arrival, PlacedSpeaker, Reflection, Vec3 } from '../../geometry';
import type { Stroke } from '../meshes/ink';
import { type Kit, LAYER } from './kit';
import { strokeSheet } from './stroke-sheet';

export interface ShownReflection {
  speaker: string;
  reflection: Reflection;
  /** Place among the speaker's own by level: 0 is the strongest; those without a level come last. */
  rank: number;
  /** The earliest or the strongest. */
  first: boolean;
}

export interface ReflectionsPart {
  group: Group;
  /** `legsToHead`: false from the listener's own eyes, where they would run into the lens. */
  show(
    head: Vec3,
    arrivals: readonly Arrival[],
    placed: ReadonlyMap<string, PlacedSpeaker>,
    legsToHead: boolean,
  ): void;
  shown(): readonly ShownReflection[];
  dispose(): void;
}

export function createReflectionsPart(kit: Kit): ReflectionsPart {
  const group = new Group();
  const sheet = strokeSheet([
    [kit.pathBehind, LAYER.hidden],
    [kit.path, LAYER.path],
  ]);
  group.add(...sheet.meshes);
  let shown: ShownReflection[] = [];
  return {
    group,
    show(head, arrivals, placed, legsToHead) {
      const strokes: Stroke[] = [];
      shown = [];
      for (const { speaker, reflections } of arrivals) {
        const from = placed.get(speaker)?.position;
        if (!from) continue;
        for (const one of ranked(speaker, reflections)) {
          const { point, second } = one.reflection;
          const stops = [from, point, ...(second ? [second.point] : []), head];
          const pen = one.first
            ? ({ tone: 'ink', width: 1.9, strength: 0.95 } as const)
            : ({ tone: 'quiet-ink', width: 1.1, strength: 0.85 } as const);
          const last = legsToHead ? stops.length : stops.length - 1;
          for (let i = 1; i < last; i++) {
            strokes.push({ start: stops[i - 1] as Vec3, end: stops[i] as Vec3, dash: 3, ...pen });
          }
          shown.push(one);
        }
      }
      sheet.draw(strokes);
    },
    shown: () => shown,
    dispose: () => sheet.dispose(),
  };
}

const loudness = ({ levelDb }: Reflection): number => levelDb ?? Number.NEGATIVE_INFINITY;

/** One speaker's reflections with their places by level. */
function ranked(speaker: string, reflections: readonly Reflection[]): ShownReflection[] {
  const byLevel = [...reflections].sort((a, b) => loudness(b) - loudness(a));
  const earliest = reflections.reduce<Reflection | null>(
    (best, one) => (best && best.extra <= one.extra ? best : one),
    null,
  );
  return reflections.map((reflection) => {
    const rank = byLevel.indexOf(reflection);
    return { speaker, reflection, rank, first: rank === 0 || reflection === earliest };
  });
}
