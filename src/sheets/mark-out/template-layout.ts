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

/** The window the drawing is seen through. */
export interface Window {
  x: number;
  y: number;
  width: number;
  height: number;
}

export function windowOf(size: PageSize): Window {
  const { width, height } = PAGE_SIZES[size];
  return {
    x: EDGE + LEFT,
    y: EDGE + TOP,
    width: width - 2 * EDGE - LEFT,
    height: height - 2 * EDGE - TOP - BOTTOM,
  };
}

/** The pages a template needs. */
export function templateTiles(template: MarkTemplate, size: PageSize): Tiling {
  const { width, height } = windowOf(size);
  const { low, high } = templateBounds(template);
  return tilesFor(low, high, [width, height]);
}
