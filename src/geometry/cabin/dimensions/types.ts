/** What is known about one dimension of the cabin. */
export type DimensionGroup =
  | 'front seat'
  | 'width'
  | 'wheel'
  | 'windscreen and roof'
  | 'sides'
  | 'dash'
  | 'foot'
  | 'centre'
  | 'rear';

export interface DimensionInfo<Id extends string = string> {
  id: Id;
  group: DimensionGroup;
  label: string;
  unit: 'mm' | 'deg';
  min: number;
  max: number;
  /** The code of SAE J1100 where one exists (codes as commonly quoted, from memory). */
  code?: string;
  /** How to measure it in a real car, in one sentence. */
  measure: string;
  /** What moves with it, in a few words. */
  moves?: string;
}

/** Keeps the ids as literal types while checking every row. */
export const rows = <Id extends string>(list: readonly DimensionInfo<Id>[]) => list;
