import type { Side } from '../../input';
import type { Dimensions } from '../dimensions';
import { leftHandDrivePatches } from '../furniture/patches';
import { mirrorDrawn } from '../mirror';
import type { Drawn, Panel } from '../model';
import type { SeatTemplate } from '../seats';
import { dashTrim } from './dash';
import { doorTrim } from './doors';
import { pedals } from './pedals';

/**
 * What is drawn but in nobody's way: instruments, vents, glove-box lid, door handles, pedals. mm,
 * car axes. The pedals keep their order on either drive side, all else mirrors.
 */
export function buildTrim(
  dimensions: Dimensions,
  panels: readonly Panel[],
  template: SeatTemplate,
  wheelSide: Side,
): Drawn[] {
  const find = leftHandDrivePatches(panels, wheelSide);
  const canonical = [...dashTrim(dimensions, find), ...doorTrim(find)];
  return [
    ...(wheelSide === 'left' ? canonical : canonical.map(mirrorDrawn)),
    ...pedals(dimensions, wheelSide, template.manual === true),
  ];
}
