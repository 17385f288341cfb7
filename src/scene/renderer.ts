import { WebGLRenderer } from 'three';

/** Names under which browsers draw without graphics hardware. */
const SOFTWARE = /swiftshader|llvmpipe|softpipe|software|basic render/i;

/**
 * True where WebGL is computed by the processor. Multisampling made a frame three times as dear
 * there (measured); ink lines are smooth without it.
 */
function drawsInSoftware(): boolean {
  const gl = document.createElement('canvas').getContext('webgl2');
  // Asked first, so that the drawing library does not write its own complaint.
  if (!gl) throw new Error('this browser has no WebGL 2');
  const info = gl.getExtension('WEBGL_debug_renderer_info');
  const name = info ? String(gl.getParameter(info.UNMASKED_RENDERER_WEBGL)) : '';
  gl.getExtension('WEBGL_lose_context')?.loseContext();
  return SOFTWARE.test(name);
}

/** @throws where the browser has no WebGL */
export function createRenderer(canvas: HTMLCanvasElement): WebGLRenderer {
  return new WebGLRenderer({
    canvas,
    antialias: !drawsInSoftware(),
    powerPreference: 'high-performance',
    // While a speaker is dragged, an option drawn beside it stays as it was drawn.
    preserveDrawingBuffer: true,
  });
}
