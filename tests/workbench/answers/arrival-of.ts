import type { Arrival } from '../../../src/geometry';

/** An arrival on a clear line 1 m long, but for what is told. */
export function arrivalOf(speaker: string, fields: Partial<Arrival> = {}): Arrival {
  const { direct = 1000, path = direct, time = path / 344, line = 'clear' } = fields;
  const ear = { direct, path, time, line, blockedBy: [], grazedBy: [] };
  return {
    ...ear,
    speaker,
    way: [],
    round: [],
    detour: null,
    offAxisDeg: 0,
    offAxisHorizontalDeg: 0,
    offAxisVerticalDeg: 0,
    levelDb: 0,
    ears: { left: ear, right: ear },
    bands: [],
    reflections: [],
    ...fields,
  };
}
