/** The sheets on the canvas: one for the option on the board, or two of one size. */
import type { PerspectiveCamera, Scene, WebGLRenderer } from 'three';
import { handOn } from './hand';
import { type Half, halfAt, type Rect, type Split, splitSheet } from './split';

export interface SheetsNeeds {
  camera: PerspectiveCamera;
  canvas: HTMLCanvasElement;
  gl: WebGLRenderer;
  scene: Scene;
  /** Where words lie over each half. */
  overlays: Readonly<Record<Half, HTMLElement>>;
}

export function createSheets({ camera, canvas, gl, scene, overlays }: SheetsNeeds) {
  const whole = { width: 1, height: 1 };
  const size = { width: 1, height: 1 };
  let two = false;
  let split: Split = splitSheet(1, 1, two);
  /** The half the hand was over last. */
  let under: Half = 'board';

  const rectOf = (half: Half): Rect => (half === 'beside' && split.beside) || split.board;

  function arrange(): void {
    split = splitSheet(whole.width, whole.height, two);
    size.width = split.board.width;
    size.height = split.board.height;
    for (const half of ['board', 'beside'] as const) lie(overlays[half], rectOf(half));
    const host = canvas.parentElement;
    if (host) host.dataset.halves = split.way;
    camera.aspect = size.width / Math.max(1, size.height);
    camera.updateProjectionMatrix();
    // What was drawn where now a name stands.
    gl.setScissorTest(false);
    gl.setClearAlpha(0);
    gl.clear();
  }

  return {
    /** Of each sheet, CSS pixels: the same object, changed in place. */
    size,
    resize(width: number, height: number): void {
      whole.width = width;
      whole.height = height;
      arrange();
    },
    share(into: 1 | 2): void {
      two = into === 2;
      under = 'board';
      arrange();
    },
    /** Draws the scene as it is now on one sheet, and leaves the other as it was. */
    put(half: Half): void {
      const { left, top, width, height } = rectOf(half);
      const bottom = whole.height - top - height;
      gl.setScissorTest(two);
      gl.setViewport(left, bottom, width, height);
      gl.setScissor(left, bottom, width, height);
      gl.render(scene, camera);
    },
    /** The canvas as the camera's controls are to see it. */
    hand: handOn(canvas, () => rectOf(under)),
    /** The hand has come over a half: turning and zooming go by it. */
    reach(half: Half): void {
      under = half;
    },
    /** The half a place of the drawing area lies in. */
    halfAt: (x: number, y: number): Half | null => halfAt(split, x, y)?.half ?? null,
    /** A place of the drawing area, as the half on the board counts it. */
    onBoard: (x: number, y: number) => ({ x: x - split.board.left, y: y - split.board.top }),
  };
}

const lie = ({ style }: HTMLElement, { left, top, width, height }: Rect): void => {
  style.left = `${left}px`;
  style.top = `${top}px`;
  style.width = `${width}px`;
  style.height = `${height}px`;
};
