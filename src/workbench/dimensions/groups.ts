import { DIMENSIONS, type DimensionGroup, type DimensionInfo, getTemplate } from '../../geometry';

/** Where the second row is not there, nothing hangs on these. */
const SECOND_ROW = new Set(['secondRowDistance', 'rearSeatOffset', 'rearSeatHeight']);

export interface Group {
  group: DimensionGroup;
  dimensions: DimensionInfo[];
}

/**
 * The dimensions of a body style by group, in the order one walks round the car.
 * @param filter words that must all occur in the name, code, group or in what moves with it
 */
export function groupsOf(template: string, filter = ''): Group[] {
  const rows = getTemplate(template)?.rows ?? 0;
  if (rows === 0) return [];
  const words = filter.toLowerCase().split(/\s+/).filter(Boolean);
  const groups: Group[] = [];
  for (const info of DIMENSIONS) {
    if (rows === 1 && SECOND_ROW.has(info.id)) continue;
    const text = `${info.label} ${info.code ?? ''} ${info.group} ${info.moves ?? ''}`.toLowerCase();
    if (!words.every((word) => text.includes(word))) continue;
    const last = groups.at(-1);
    if (last?.group === info.group) last.dimensions.push(info);
    else groups.push({ group: info.group, dimensions: [info] });
  }
  return groups;
}
