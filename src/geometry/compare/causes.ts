/** What may be a little off when an option is built, and by how much. */
import type { Panel } from '../cabin/model';
import type { SpeakerInput } from '../input';
import { type Along, stepAlong } from '../study/step-along';
import { whoIn } from './groups';

/**
 * Standard uncertainties; all choices of ours, no source: a hole marked out with tape and template,
 * a notch of a seat rail, a car that is not as warm as the plan.
 */
export interface Uncertainties {
  /** Of a speaker's spot, along the panel and across it each, mm. */
  spot: number;
  /** Of a seat along its rails, mm. */
  seat: number;
  temperatureC: number;
}

export const USUAL_UNCERTAINTIES: Uncertainties = { spot: 3, seat: 10, temperatureC: 5 };

/**
 * A difference counts when it is larger than this many standard uncertainties: about 95 % of a
 * normal distribution. Source: JCGM 100:2008 (GUM), 6.2 and 6.3.
 */
export const COVERAGE = 2;

export type Sign = 1 | -1;

/** One way one speaker's spot can be off. */
export interface SpotCause {
  /** The same for one speaker on one spot in two options: they share the hole. */
  id: string;
  speaker: string;
  /** The speaker with its spot off, or why it cannot be. */
  moved: Readonly<Record<Sign, SpeakerInput | { why: string }>>;
}

/** Along u and v of the panel; a free point along the three axes of the car. */
export function spotCauses(
  speakers: readonly SpeakerInput[],
  panels: readonly Panel[],
  { spot }: Uncertainties,
): SpotCause[] {
  const who = new Map(
    whoIn(speakers).flatMap((group) =>
      group.members.map(({ id }) => [id, `${group.who.role}${group.who.nth}`] as const),
    ),
  );
  return speakers.flatMap((speaker): SpotCause[] => {
    const { id, mount, position, side = '' } = speaker;
    const place = JSON.stringify(
      mount ? [mount.panel, mount.u, mount.v, mount.standoff ?? 0] : position,
    );
    const cause = (way: string, moved: (sign: Sign) => SpotCause['moved'][1]): SpotCause => ({
      id: `${who.get(id)}${side} ${place} ${way}`,
      speaker: id,
      moved: { 1: moved(1), [-1]: moved(-1) } as SpotCause['moved'],
    });
    if (mount) {
      const panel = panels.find((one) => one.id === mount.panel);
      if (!panel) return [];
      return (['u', 'v'] as const).map((along: Along) =>
        cause(along, (sign) => {
          const there = stepAlong(panel.patch, mount, along, sign * spot);
          return there
            ? { ...speaker, mount: { ...mount, ...there } }
            : { why: `"${id}" is within ${spot} mm of the edge of its panel` };
        }),
      );
    }
    if (!position) return [];
    const [x, y, z] = position;
    return [
      cause('x', (sign) => ({ ...speaker, position: [x + sign * spot, y, z] })),
      cause('y', (sign) => ({ ...speaker, position: [x, y + sign * spot, z] })),
      cause('z', (sign) => ({ ...speaker, position: [x, y, z + sign * spot] })),
    ];
  });
}
