/** What is wrong with a spot, in a sentence with its millimetres. */
export type FitKind =
  | 'outline'
  | 'curvature'
  | 'cutout'
  | 'depth'
  | 'airspace'
  | 'speaker'
  | 'obstacle'
  | 'zone'
  | 'no-panel'
  /** There is no such mounting ring, or only with more stand-off. */
  | 'ring'
  /** The speaker does not go through the bore of its ring. */
  | 'bore'
  /** Its flange does not rest on its ring, or is not held by the ring's screws. */
  | 'flange'
  /** It is to stand on a ring at a free point. */
  | 'free-ring';

export interface FitProblem {
  kind: FitKind;
  sentence: string;
  /** Beyond what is allowed, > 0: mm, litres for `airspace`; `null` where no number says it. */
  by: number | null;
  /** Id of the other thing: panel, speaker, obstacle or zone. */
  with?: string;
  /** Of the mounting ring it stands on, not of the speaker itself. Left out: of the speaker. */
  ofRing?: true;
  /** True for keep-clear zones: a search never goes there. */
  hard: boolean;
}

/** "4 mm", "0.4 mm", "12 mm": one decimal below 10. */
export function millimetres(by: number): string {
  return `${roundedBy(by)} mm`;
}

/** "0.35 litres". */
export const litres = (by: number): string =>
  `${by < 1 ? Math.max(0.01, Math.round(by * 100) / 100) : Math.round(by * 10) / 10} litres`;

const roundedBy = (by: number): number =>
  by >= 10 ? Math.round(by) : Math.max(0.1, Math.round(by * 10) / 10);

/** "the left A-pillar"; what the plan gave has only its id for a name, and keeps it as it is. */
export const nameOf = (thing: { id: string; name: string }): string =>
  thing.name === thing.id ? `"${thing.id}"` : `the ${thing.name}`;
