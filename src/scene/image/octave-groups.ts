import type { SeatImage } from '../../geometry';

export interface OctaveGroup {
  lowHz: number;
  highHz: number;
  /** Mean of the octaves', degrees to the right. */
  deg: number;
  /** At least one of them lies at least so far to the side. */
  atLimit: boolean;
}

/** Octaves heard within this of each other read as one place, degrees. By eye. */
const ONE_PLACE = 4;

/** Neighbouring octaves heard in nearly one place, so that a label need not stand on each. */
export function octaveGroups(bands: SeatImage['on']): OctaveGroup[] {
  const groups: (OctaveGroup & { count: number })[] = [];
  let open: (typeof groups)[number] | null = null;
  for (const { frequencyHz, lateralDeg, atLimit } of bands) {
    if (lateralDeg === null) {
      open = null;
      continue;
    }
    if (open && open.atLimit === atLimit && Math.abs(open.deg - lateralDeg) <= ONE_PLACE) {
      open.deg = (open.deg * open.count + lateralDeg) / (open.count + 1);
      open.count++;
      open.highHz = frequencyHz;
      continue;
    }
    open = { lowHz: frequencyHz, highHz: frequencyHz, deg: lateralDeg, atLimit, count: 1 };
    groups.push(open);
  }
  return groups.map(({ count: _, ...group }) => group);
}
