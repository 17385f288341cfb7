/** Longer names are cut: file systems stop at 255 bytes, a sign can take four. */
const LONGEST = 60;

/**
 * A title as a file name any system takes: no path, no control or direction signs, nothing hidden,
 * no name that means a device on some system.
 */
export function fileName(title: string, ending: string): string {
  const plain = title
    .normalize('NFC')
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '');
  const short = [...plain].slice(0, LONGEST).join('').replace(/-+$/, '');
  const device = /^(con|prn|aux|nul|com\d|lpt\d)$/i.test(short);
  return `${short === '' || device ? `plan-${short}`.replace(/-$/, '') : short}.${ending}`;
}
