/** Dimensions of the cabin: as the page calls them, held to it by a test. */
import { DIMENSIONS, type DimensionId } from '../../../geometry';

export const dimensions = Object.fromEntries(
  DIMENSIONS.map(({ id, label }) => [`dimension.${id}`, label]),
) as Record<`dimension.${DimensionId}`, string>;
