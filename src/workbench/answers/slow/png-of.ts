/**
 * An SVG file as a PNG of so many pixels, drawn by the browser on white.
 * @throws where the browser cannot draw it
 */
export async function pngOf(svg: string, width: number, height: number): Promise<Blob> {
  const address = URL.createObjectURL(new Blob([svg], { type: 'image/svg+xml' }));
  try {
    const picture = new Image();
    picture.src = address;
    await picture.decode();
    const canvas = document.createElement('canvas');
    canvas.width = Math.round(width);
    canvas.height = Math.round(height);
    const pen = canvas.getContext('2d');
    if (!pen) throw new Error('this browser cannot draw pictures');
    pen.drawImage(picture, 0, 0, canvas.width, canvas.height);
    return await new Promise((done, fail) =>
      canvas.toBlob((blob) => (blob ? done(blob) : fail(new Error('no picture came of it')))),
    );
  } finally {
    URL.revokeObjectURL(address);
  }
}
