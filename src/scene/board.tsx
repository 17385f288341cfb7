/** Puts the drawing on a canvas: one React Three Fiber root that draws only when asked. */
import { createRoot, type ReconcilerRoot, useFrame, useThree } from '@react-three/fiber';
import { useEffect, useLayoutEffect, useRef } from 'react';
import { PerspectiveCamera } from 'three';
import { createDrawing, type Drawing } from './drawing';
import { attachKeys } from './keys';
import { attachPointer } from './pointer';
import { createRenderer } from './renderer';

/** Sharper than this no eye sees at arm's length, and every step costs its square. */
const MOST_PIXEL_RATIO = 2;

interface BoardProps {
  host: HTMLElement;
  canvas: HTMLCanvasElement;
  overlay: HTMLElement;
  besideOverlay: HTMLElement;
  /** Called when the drawing cannot go on; the rest of the page does. */
  fail(reason: unknown): void;
}

function Board({ host, canvas, overlay, besideOverlay, fail }: BoardProps) {
  const gl = useThree((state) => state.gl);
  const scene = useThree((state) => state.scene);
  const camera = useThree((state) => state.camera) as PerspectiveCamera;
  const invalidate = useThree((state) => state.invalidate);
  const drawing = useRef<Drawing | null>(null);
  const frames = useRef(0);

  useLayoutEffect(() => {
    const ask = () => invalidate();
    const made = createDrawing({ camera, canvas, overlay, besideOverlay, gl, scene, ask });
    drawing.current = made;
    const detach = [
      attachPointer(host, canvas, camera, made),
      attachKeys(canvas, camera, made),
      followSize(host, (width, height) => {
        const ratio = Math.min(window.devicePixelRatio || 1, MOST_PIXEL_RATIO);
        gl.setPixelRatio(ratio);
        gl.setSize(width, height, false);
        // The library wrote the first size on the canvas; it is to fill its place whatever that is.
        canvas.style.width = canvas.style.height = '100%';
        made.resize(width, height);
      }),
      surviveContextLoss(canvas, made.anew),
    ];
    invalidate();
    return () => {
      drawing.current = null;
      for (const stop of detach) stop();
      made.end();
    };
  }, [camera, canvas, gl, host, invalidate, overlay, besideOverlay, scene]);

  // Priority 1 takes the drawing of the frame over from the library, so that what is on the sheet
  // and the words over it always belong to the same moment.
  useFrame(() => {
    const now = drawing.current;
    if (!now) return;
    try {
      const more = now.frame(performance.now());
      now.draw();
      frames.current++;
      canvas.dataset.sceneFrames = String(frames.current);
      if (now.whole()) document.documentElement.dataset.sceneReady = 'true';
      if (more) invalidate();
    } catch (reason) {
      fail(reason);
    }
  }, 1);

  useEffect(
    () => () => {
      delete document.documentElement.dataset.sceneReady;
    },
    [],
  );
  return null;
}

function followSize(host: HTMLElement, changed: (width: number, height: number) => void) {
  const measure = () => {
    const { clientWidth, clientHeight } = host;
    if (clientWidth > 0 && clientHeight > 0) changed(clientWidth, clientHeight);
  };
  const observer = new ResizeObserver(measure);
  observer.observe(host);
  measure();
  return () => observer.disconnect();
}

function surviveContextLoss(canvas: HTMLCanvasElement, ask: () => void) {
  // Without preventDefault the browser does not give the context back.
  const lost = (event: Event) => event.preventDefault();
  // Drawing on demand, the canvas would stay blank until something moved.
  const restored = () => ask();
  canvas.addEventListener('webglcontextlost', lost);
  canvas.addEventListener('webglcontextrestored', restored);
  return () => {
    canvas.removeEventListener('webglcontextlost', lost);
    canvas.removeEventListener('webglcontextrestored', restored);
  };
}

/**
 * Makes the canvas and its overlay inside `host` and starts drawing. A canvas of its own each
 * time: a drawing context once given up cannot be taken up again.
 * @throws where the browser has no WebGL
 */
export function startBoard(
  host: HTMLElement,
  describedBy: string,
  fail: (reason: unknown) => void,
) {
  const canvas = document.createElement('canvas');
  canvas.className = 'scene-canvas';
  canvas.tabIndex = 0;
  canvas.setAttribute('role', 'application');
  canvas.setAttribute('aria-label', 'Drawing of the car');
  canvas.setAttribute('aria-describedby', describedBy);
  const overlay = layOver();
  const besideOverlay = layOver();
  host.prepend(canvas, overlay, besideOverlay);
  let root: ReconcilerRoot<HTMLCanvasElement> | null = null;
  const stop = () => {
    root?.unmount();
    canvas.remove();
    overlay.remove();
    besideOverlay.remove();
  };
  try {
    const gl = createRenderer(canvas);
    const camera = new PerspectiveCamera(24, 1, 10, 20_000);
    root = createRoot(canvas);
    root.configure({
      gl,
      camera,
      frameloop: 'demand',
      flat: true,
      dpr: 1,
      size: { width: host.clientWidth || 1, height: host.clientHeight || 1, top: 0, left: 0 },
    });
    root.render(<Board {...{ host, canvas, overlay, besideOverlay, fail }} />);
  } catch (reason) {
    stop();
    throw reason;
  }
  return stop;
}

function layOver(): HTMLElement {
  const overlay = document.createElement('div');
  overlay.className = 'scene-overlay';
  overlay.setAttribute('aria-hidden', 'true');
  return overlay;
}
