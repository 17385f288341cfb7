/**
 * Rounds up: what is told as wanted has to be enough when it is typed in. A billionth of a step is
 * rounding.
 * @param steps steps in the value's unit; left out: tenths (of a millimetre)
 */
export const stepUp = (value: number, steps = 10): number =>
  Math.ceil(value * steps - 1e-9) / steps;
