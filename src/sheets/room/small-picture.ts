import { isLogo } from '../../store/paper-settings';

/** A picture as a small data: address, drawn anew so that nothing hidden in the file comes along. */
export type PictureAnswer = { ok: true; address: string } | { ok: false; problem: string };

/** Files larger than this are not opened at all, bytes. */
const LARGEST_FILE = 20_000_000;
/** Longest sides tried in turn until the address is small enough, px; 1000 px are 300 dpi on 85 mm. */
const SIDES = [1000, 600, 320];

/** Reads a PNG, JPEG, WebP or SVG file; answers with a PNG of at most 1000 px, or with a sentence. */
export async function smallPicture(file: File): Promise<PictureAnswer> {
  const refuse = (why: string): PictureAnswer => ({
    ok: false,
    problem: `“${file.name}”: ${why}.`,
  });
  if (!/^image\/(png|jpeg|webp|svg\+xml)$/.test(file.type))
    return refuse('expected a PNG, JPEG, WebP or SVG picture');
  if (file.size > LARGEST_FILE) return refuse('larger than 20 MB');
  const source = URL.createObjectURL(file);
  try {
    const image = new Image();
    image.src = source;
    await image.decode();
    for (const side of SIDES) {
      const address = drawn(image, side, file.type === 'image/svg+xml');
      if (address && isLogo(address)) return { ok: true, address };
    }
    return refuse('still too large when made small');
  } catch {
    return refuse('cannot be read as a picture');
  } finally {
    URL.revokeObjectURL(source);
  }
}

function drawn(image: HTMLImageElement, side: number, vector: boolean): string | null {
  const width = image.naturalWidth || 2;
  const height = image.naturalHeight || 1;
  const fitting = side / Math.max(width, height);
  const scale = vector ? fitting : Math.min(1, fitting);
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.round(width * scale));
  canvas.height = Math.max(1, Math.round(height * scale));
  const context = canvas.getContext('2d');
  if (!context) return null;
  context.drawImage(image, 0, 0, canvas.width, canvas.height);
  return canvas.toDataURL('image/png');
}
