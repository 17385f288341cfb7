import { type Color, ShaderMaterial, Vector3 } from 'three';
import type { Side } from '../../geometry';
import type { Kit } from '../parts/kit';
import type { WaveBounds } from '../waves/wave-bounds';
import { EDGES, type WaveRoom, waveMaterial } from './wave-material';

export type WaveSide = Side | 'neither';

/** A wave that has arrived is still in the air, and out of interest. By eye. */
const PAST = 0.22;

const SIDES: readonly WaveSide[] = ['left', 'right', 'neither'];

/** Every way a wave is painted: by side, coming or past; and the dot of what comes round something. */
export function createWavesLook({ look, sides }: Pick<Kit, 'look' | 'sides'>) {
  const room: WaveRoom = {
    uEdges: { value: Array.from({ length: EDGES }, () => new Vector3()) },
    uFloor: { value: 0 },
    uRoof: { value: 0 },
    uEars: { value: 0 },
  };
  const paints = (strength: number, behind: boolean) =>
    Object.fromEntries(
      SIDES.map((side) => {
        const wave = { colour: sides[side], dashed: side === 'right', strength, behind };
        return [side, waveMaterial(look, room, wave)];
      }),
    ) as Record<WaveSide, ShaderMaterial>;
  const coming = paints(1, false);
  const past = paints(PAST, false);
  const comingBehind = paints(1, true);
  const dots = Object.fromEntries(SIDES.map((side) => [side, dotMaterial(sides[side])])) as Record<
    WaveSide,
    ShaderMaterial
  >;
  return {
    coming,
    past,
    comingBehind,
    dots,
    /** Waves are drawn within these edges, and have a line at the height of the ears. */
    within({ edges, floor, roof }: WaveBounds, ears: number): void {
      for (const [i, [across, rearward, far]] of edges.entries())
        room.uEdges.value[i]?.set(across, rearward, far);
      room.uFloor.value = floor;
      room.uRoof.value = roof;
      room.uEars.value = ears;
    },
    dispose(): void {
      for (const material of [coming, past, comingBehind, dots].flatMap((all) =>
        Object.values(all),
      ))
        material.dispose();
    },
  };
}

/** Plain, and before everything: what matters is where it is. */
const dotMaterial = (colour: Color): ShaderMaterial =>
  new ShaderMaterial({
    name: 'dot',
    transparent: true,
    depthTest: false,
    depthWrite: false,
    uniforms: { uColour: { value: colour } },
    vertexShader:
      'void main() { gl_Position = projectionMatrix * modelViewMatrix * vec4(position, 1.0); }',
    fragmentShader: /* glsl */ `
uniform vec3 uColour;
void main() {
  gl_FragColor = vec4(uColour, 1.0);
  #include <colorspace_fragment>
}`,
  });
