import { strToU8, zipSync } from 'fflate';
import type { MeshShape } from '../../geometry';

const TYPES =
  '<?xml version="1.0" encoding="UTF-8"?>\n' +
  '<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types">' +
  '<Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>' +
  '<Default Extension="model" ContentType="application/vnd.ms-package.3dmanufacturing-3dmodel+xml"/>' +
  '</Types>';

const RELATIONS =
  '<?xml version="1.0" encoding="UTF-8"?>\n' +
  '<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">' +
  '<Relationship Target="/3D/3dmodel.model" Id="rel0" Type="http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel"/>' +
  '</Relationships>';

/** When all files carry the same time, the same mesh gives the same bytes; the ZIP format's first day. */
const NO_DATE = new Date(1980, 0, 1);

/**
 * Meshes as one 3MF package (3MF Consortium, 3D Manufacturing Format Core Specification 1.3), mm:
 * an object each, side by side along X with a gap, so that none lies in another.
 * @throws RangeError where there is none
 */
export function threeMfOf(parts: readonly { mesh: MeshShape; title: string }[]): Uint8Array {
  if (parts.length === 0) throw new RangeError('threeMfOf: expected a mesh at least, got none');
  let next = 0;
  const items: string[] = [];
  const objects = parts.map(({ mesh, title }, n) => {
    const xs = mesh.vertices.map(([x]) => x);
    const [low, high] = [least(xs), -least(xs.map((x) => -x))];
    items.push(
      `<item objectid="${n + 1}" transform="1 0 0 0 1 0 0 0 1 ${number(next - low)} 0 0"/>`,
    );
    next += high - low + GAP;
    const vertices = mesh.vertices
      .map((p) => `<vertex x="${number(p[0])}" y="${number(p[1])}" z="${number(p[2])}"/>`)
      .join('');
    const triangles = mesh.triangles
      .map(([a, b, c]) => `<triangle v1="${a}" v2="${b}" v3="${c}"/>`)
      .join('');
    return (
      `<object id="${n + 1}" type="model" name="${escaped(title)}"><mesh>` +
      `<vertices>${vertices}</vertices><triangles>${triangles}</triangles></mesh></object>`
    );
  });
  const model =
    '<?xml version="1.0" encoding="UTF-8"?>\n' +
    '<model unit="millimeter" xml:lang="en-US" xmlns="http://schemas.microsoft.com/3dmanufacturing/core/2015/02">' +
    `<resources>${objects.join('')}</resources><build>${items.join('')}</build></model>`;
  return zipSync(
    {
      '[Content_Types].xml': strToU8(TYPES),
      '_rels/.rels': strToU8(RELATIONS),
      '3D/3dmodel.model': strToU8(model),
    },
    { mtime: NO_DATE },
  );
}

/** Between parts on the build plate, mm. */
const GAP = 10;

const least = (values: readonly number[]): number =>
  values.reduce((low, x) => Math.min(low, x), Number.POSITIVE_INFINITY);

/** A tenth of a micrometre is more than any printer knows; never in exponent form. */
const number = (value: number): string => String(Number(value.toFixed(4)));

const ESCAPES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
};

/** Also without the control characters that XML cannot hold. */
const escaped = (text: string): string =>
  [...text]
    .filter((letter) => letter >= ' ')
    .map((letter) => ESCAPES[letter] ?? letter)
    .join('');
