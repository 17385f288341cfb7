import { createElement, type ReactElement } from 'react';
import type { SvgNode } from '../../exchange/picture-strip';

/** A drawing that came as data, on the page. */
export function svgTree({ tag, attributes, children }: SvgNode, key?: number): ReactElement {
  return createElement(
    tag,
    { ...attributes, key },
    ...children.map((child, i) => (typeof child === 'string' ? child : svgTree(child, i))),
  );
}
