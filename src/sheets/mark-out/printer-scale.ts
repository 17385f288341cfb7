/** Whether a printed template is true, from what its own two rulers measure on the paper. */

/** Length of the rulers as drawn, mm. */
export const RULER = 100;

/** A template stretched or shrunk by more than this share is not to be used. */
export const MOST_STRETCH = 0.005;

export interface PrinterScale {
  /** On paper over as drawn, less 1: −0.012 is 1.2 % too small. */
  across: number;
  up: number;
  ok: boolean;
}

/**
 * @param across,up what the ruler across and the one up the page measure, mm
 * @throws RangeError for what is no length
 */
export function printerScale(across: number, up: number): PrinterScale {
  for (const mm of [across, up])
    if (!(mm > 0 && Number.isFinite(mm)))
      throw new RangeError(`printerScale: expected lengths above 0 mm, got ${mm}`);
  const stretch = { across: across / RULER - 1, up: up / RULER - 1 };
  // Rounding does not refuse what is just at the limit.
  const ok = Math.max(Math.abs(stretch.across), Math.abs(stretch.up)) <= MOST_STRETCH + 1e-9;
  return { ...stretch, ok };
}
