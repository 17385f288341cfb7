import { useEffect, useState } from 'react';
import { buildCabin, TEMPLATES } from '../../geometry';
import { bodyShapes, type FlatShape, panelShape } from '../dimensions/drawing/outline';

export type Silhouettes = ReadonlyMap<string, readonly FlatShape[]>;

/** What makes a body style known from the side, besides its outline. */
const WINDOWS = /(side|quarter)-glass|^mirror-corner/;

const made = new Map<string, readonly FlatShape[]>();

/** One body style from the side, from the engine's own geometry; empty where no cabin comes of it. */
export function silhouetteOf(template: string): readonly FlatShape[] {
  const known = made.get(template);
  if (known) return known;
  const answer = buildCabin({ cabin: { template, wheelSide: 'left' } });
  const shapes = answer.ok
    ? [
        ...answer.cabin.panels
          .filter(({ id }) => WINDOWS.test(id) && id.endsWith('-left'))
          .map((panel) => panelShape(panel, 'side')),
        ...bodyShapes(answer.cabin, 'side'),
      ]
    : [];
  made.set(template, shapes);
  return shapes;
}

/**
 * The silhouettes of all body styles, made one by one between frames, so that the dialog answers
 * from the start and fills as it goes.
 */
export function useSilhouettes(): Silhouettes {
  const [ready, setReady] = useState<Silhouettes>(() => new Map(made));
  useEffect(() => {
    const waiting = TEMPLATES.map(({ id }) => id).filter((id) => !made.has(id));
    let timer: ReturnType<typeof setTimeout>;
    const next = () => {
      const id = waiting.shift();
      if (id === undefined) return;
      silhouetteOf(id);
      setReady(new Map(made));
      timer = setTimeout(next, 0);
    };
    timer = setTimeout(next, 0);
    return () => clearTimeout(timer);
  }, []);
  return ready;
}
