/**
 * A short mark of a text, to tell a damaged one: its length and the 32-bit FNV-1a hash of its
 * UTF-16 units (Fowler, Noll, Vo). Against accidents, not against intent.
 */
export function checksum(text: string): string {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) {
    hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  }
  return `${text.length}-${(hash >>> 0).toString(16)}`;
}
