import { isLogo } from '../../store/paper-settings';

/** A picture drawn anew, so that nothing hidden in the file comes along, or why it is refused. */
export type Answer<T> = { ok: true; picture: T } | { ok: false; problem: string };

/** Files larger than this are not opened at all, bytes. */
const LARGEST_FILE = 30_000_000;
/** Longest sides tried in turn until the address is small enough, px; 1000 px are 300 dpi on 85 mm. */
const LOGO_SIDES = [1000, 600, 320];
/** Longest side of a photograph, px: 230 dpi across a page. */
const PHOTO_SIDE = 1600;
const PHOTO_QUALITY = 0.85;

/** Reads a PNG, JPEG, WebP or SVG file as a logo: a PNG of at most 1000 px as a data: address. */
export function logoFrom(file: File): Promise<Answer<string>> {
  return read(
    file,
    /^image\/(png|jpeg|webp|svg\+xml)$/,
    'a PNG, JPEG, WebP or SVG picture',
    (image) => {
      const vector = file.type === 'image/svg+xml';
      for (const side of LOGO_SIDES) {
        const address = drawn(image, side, vector, false)?.toDataURL('image/png');
        if (address && isLogo(address)) return Promise.resolve(address);
      }
      return Promise.resolve(null);
    },
  );
}

export interface Photo {
  width: number;
  height: number;
  bytes: Uint8Array<ArrayBuffer>;
}

/** Reads a JPEG, PNG or WebP file as a photograph: a JPEG of at most 1600 px, without its location. */
export function photoFrom(file: File): Promise<Answer<Photo>> {
  return read(file, /^image\/(png|jpeg|webp)$/, 'a JPEG, PNG or WebP picture', async (image) => {
    const canvas = drawn(image, PHOTO_SIDE, false, true);
    if (!canvas) return null;
    const blob = await new Promise<Blob | null>((resolve) => {
      canvas.toBlob(resolve, 'image/jpeg', PHOTO_QUALITY);
    });
    if (!blob) return null;
    const bytes = new Uint8Array(await blob.arrayBuffer());
    return { width: canvas.width, height: canvas.height, bytes };
  });
}

async function read<T>(
  file: File,
  types: RegExp,
  expected: string,
  take: (image: HTMLImageElement) => Promise<T | null>,
): Promise<Answer<T>> {
  const refuse = (why: string): Answer<T> => ({ ok: false, problem: `“${file.name}”: ${why}.` });
  if (!types.test(file.type)) return refuse(`expected ${expected}`);
  if (file.size > LARGEST_FILE) return refuse('larger than 30 MB');
  const source = URL.createObjectURL(file);
  try {
    const image = new Image();
    image.src = source;
    await image.decode();
    const picture = await take(image);
    return picture === null ? refuse('still too large when made small') : { ok: true, picture };
  } catch {
    return refuse('cannot be read as a picture');
  } finally {
    URL.revokeObjectURL(source);
  }
}

function drawn(
  image: HTMLImageElement,
  side: number,
  vector: boolean,
  opaque: boolean,
): HTMLCanvasElement | null {
  const width = image.naturalWidth || 2;
  const height = image.naturalHeight || 1;
  const fitting = side / Math.max(width, height);
  const scale = vector ? fitting : Math.min(1, fitting);
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.round(width * scale));
  canvas.height = Math.max(1, Math.round(height * scale));
  const context = canvas.getContext('2d');
  if (!context) return null;
  if (opaque) {
    // A JPEG has no clear places: paper shows there.
    context.fillStyle = 'white';
    context.fillRect(0, 0, canvas.width, canvas.height);
  }
  context.drawImage(image, 0, 0, canvas.width, canvas.height);
  return canvas;
}
