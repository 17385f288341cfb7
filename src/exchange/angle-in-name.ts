/**
 * The angle a file's name speaks of, degrees, or null: a number with its unit ("mid 30deg.txt",
 * "mid_-15°.txt": 15), "on axis" (0), or the only number standing by itself ("tweeter-45.txt").
 * A guess to start from: the user sees it before it counts.
 */
export function angleInName(fileName: string): number | null {
  const name = fileName.replace(/\.[a-z]\w{0,4}$/i, '');
  const named = /(\d+(?:[.,]\d+)?)[\s_-]*(?:°|deg)/i.exec(name);
  if (named?.[1]) return angle(named[1]);
  if (/(?:^|[^a-z])on[\s_-]?axis(?:$|[^a-z])/i.test(name)) return 0;
  const alone = name.match(/(?<![\p{L}\p{N}.,])\d+(?:[.,]\d+)?(?![\p{L}\p{N}.,])/gu) ?? [];
  return alone.length === 1 ? angle(alone[0] as string) : null;
}

function angle(text: string): number | null {
  const value = Number(text.replace(',', '.'));
  return value <= 180 ? value : null;
}
