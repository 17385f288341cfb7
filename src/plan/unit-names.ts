export type LengthUnit = 'mm' | 'in';
export type TemperatureUnit = 'C' | 'F';

/** Exact by definition since the international yard and pound agreement of 1959. */
export const MM_PER_INCH = 25.4;
