import type { Rect } from './split';

/**
 * The canvas as the camera's controls are to see it: as large as one half and standing where the
 * half under the hand stands, so that turning is as quick and zooming as true as on a whole sheet.
 * It has what OrbitControls of three 0.187 asks of an element, and nothing else.
 */
export function handOn(canvas: HTMLCanvasElement, sheet: () => Rect): HTMLElement {
  const hand = {
    ownerDocument: canvas.ownerDocument,
    style: canvas.style,
    get clientWidth() {
      return sheet().width;
    },
    get clientHeight() {
      return sheet().height;
    },
    getBoundingClientRect() {
      const { left, top } = canvas.getBoundingClientRect();
      const rect = sheet();
      return new DOMRect(left + rect.left, top + rect.top, rect.width, rect.height);
    },
    getRootNode: canvas.getRootNode.bind(canvas),
    addEventListener: canvas.addEventListener.bind(canvas),
    removeEventListener: canvas.removeEventListener.bind(canvas),
    setPointerCapture: canvas.setPointerCapture.bind(canvas),
    releasePointerCapture: canvas.releasePointerCapture.bind(canvas),
  };
  return hand as unknown as HTMLElement;
}
