/** Where things stand on a template's page; mm from the sheet's upper left corner. */
import type { MarkTemplate } from '../../geometry';
import type { PageSize } from '../../store/paper-settings';
import { PAGE_SIZES } from '../page';
import { templateBounds } from './template-drawing';
import { type Tiling, tilesFor } from './tiles';

/** White round the page, mm: what a desktop printer leaves. */
export const EDGE = 9;
/** Words above the drawing; ruler and words below it; ruler at its left. */
export const TOP = 29;
export const BOTTOM = 30;
export const LEFT = 13;

/** What a keep-clear warning takes above the drawing: four lines, as its style has it. */
export const WARNING = 16;

/** The window the drawing is seen through. */
export interface Window {
  x: number;
  y: number;
  width: number;
  height: number;
}

/** @param warned with a keep-clear warning above it */
export function windowOf(size: PageSize, warned = false): Window {
  const { width, height } = PAGE_SIZES[size];
  const top = TOP + (warned ? WARNING : 0);
  return {
    x: EDGE + LEFT,
    y: EDGE + top,
    width: width - 2 * EDGE - LEFT,
    height: height - 2 * EDGE - top - BOTTOM,
  };
}

/** The pages a template needs. */
export function templateTiles(template: MarkTemplate, size: PageSize, warned = false): Tiling {
  const { width, height } = windowOf(size, warned);
  const { low, high } = templateBounds(template);
  return tilesFor(low, high, [width, height]);
}
