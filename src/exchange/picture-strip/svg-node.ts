/** A vector drawing as data: written to a file as text, or shown by whoever draws the page. */
export interface SvgNode {
  tag:
    | 'svg'
    | 'g'
    | 'path'
    | 'circle'
    | 'ellipse'
    | 'rect'
    | 'text'
    | 'defs'
    | 'use'
    | 'clipPath'
    | 'title';
  /** By their names in the document model: "strokeWidth", "viewBox". */
  attributes: Readonly<Record<string, string | number>>;
  children: readonly (SvgNode | string)[];
}

export const node = (
  tag: SvgNode['tag'],
  attributes: SvgNode['attributes'],
  ...children: (SvgNode | string)[]
): SvgNode => ({ tag, attributes, children });

/** Attributes that keep their capitals in a file; all others are written with hyphens. */
const AS_THEY_ARE = new Set(['viewBox']);

const nameOf = (name: string): string =>
  AS_THEY_ARE.has(name) ? name : name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);

const SIGNS: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
};

/** Signs an XML 1.0 document may hold; names typed by a user may hold any. */
const isAllowed = (sign: string): boolean => {
  const code = sign.codePointAt(0) ?? 0;
  if (code < 0x20) return code === 0x9 || code === 0xa || code === 0xd;
  return code < 0xd800 || (code > 0xdfff && code < 0xfffe) || code > 0xffff;
};

const plain = (text: string): string =>
  [...text].flatMap((sign) => (isAllowed(sign) ? (SIGNS[sign] ?? sign) : [])).join('');

const valueText = (value: string | number): string =>
  typeof value === 'number' ? String(rounded(value)) : plain(value);

/** A drawing's numbers, to a hundredth of its unit. */
export const rounded = (value: number): number => Math.round(value * 100) / 100;

function written({ tag, attributes, children }: SvgNode): string {
  const own = Object.entries(attributes).map(
    ([name, value]) => ` ${nameOf(name)}="${valueText(value)}"`,
  );
  if (children.length === 0) return `<${tag}${own.join('')}/>`;
  const inside = children.map((child) =>
    typeof child === 'string' ? plain(child) : written(child),
  );
  return `<${tag}${own.join('')}>${inside.join('')}</${tag}>`;
}

/** The drawing as an SVG file. */
export function svgText(drawing: SvgNode): string {
  const attributes = { xmlns: 'http://www.w3.org/2000/svg', ...drawing.attributes };
  return `<?xml version="1.0" encoding="UTF-8"?>\n${written({ ...drawing, attributes })}\n`;
}
