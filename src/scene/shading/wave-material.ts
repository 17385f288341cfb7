/**
 * The sound of one speaker as a sphere: a thin lit shell with an inked rim, and a line where it cuts
 * the height of the ears. What reaches out of the cabin is not drawn.
 */

import type { Vector3 } from 'three';
import { type Color, DoubleSide, GreaterDepth, LessEqualDepth, ShaderMaterial } from 'three';
import type { Look } from './look';

/** So many edges cut a cabin out closely. */
export const EDGES = 24;

/** Set for all waves at once. In three's axes, mm. */
export interface WaveRoom {
  /** Straight edges round the cabin seen from above: which way out, across and rearward, and how far. */
  uEdges: { value: Vector3[] };
  uFloor: { value: number };
  uRoof: { value: number };
  /** Height of the ears. */
  uEars: { value: number };
}

export interface WaveLook {
  colour: Color;
  /** Drawn with a dashed rim: the right side, not told by colour alone. */
  dashed: boolean;
  /** 1 on its way; less when what arrives is there. */
  strength: number;
  /** The part that something stands before: its lines alone, and fainter. */
  behind: boolean;
}

export function waveMaterial(look: Look, room: WaveRoom, wave: WaveLook): ShaderMaterial {
  return new ShaderMaterial({
    name: 'wave',
    transparent: true,
    depthWrite: false,
    side: DoubleSide,
    depthFunc: wave.behind ? GreaterDepth : LessEqualDepth,
    uniforms: {
      ...room,
      uKey: look.uKey,
      uPen: look.uPen,
      uPixelRatio: look.uPixelRatio,
      uDark: look.uDark,
      uColour: { value: wave.colour },
      uDashed: { value: wave.dashed ? 1 : 0 },
      uStrength: { value: wave.strength },
      uBehind: { value: wave.behind ? 1 : 0 },
    },
    vertexShader: /* glsl */ `
varying vec3 vNormal;
varying vec3 vWorld;
varying vec2 vAround;
void main() {
  vec4 world = modelMatrix * vec4(position, 1.0);
  // A sphere of radius 1: where a point lies is where it faces.
  vNormal = mat3(modelMatrix) * position;
  vWorld = world.xyz;
  vAround = (mat3(viewMatrix) * vNormal).xy;
  gl_Position = projectionMatrix * viewMatrix * world;
}`,
    fragmentShader: `#define EDGES ${EDGES}\n${
      /* glsl */ `
uniform vec3 uKey;
uniform vec3 uColour;
uniform vec3 uEdges[EDGES];
uniform float uFloor;
uniform float uRoof;
uniform float uBehind;
uniform float uEars;
uniform float uPen;
uniform float uPixelRatio;
uniform float uDark;
uniform float uDashed;
uniform float uStrength;
varying vec3 vNormal;
varying vec3 vWorld;
varying vec2 vAround;
const float DASHES = 36.0;
void main() {
  if (vWorld.y < uFloor || vWorld.y > uRoof) discard;
  for (int i = 0; i < EDGES; i++)
    if (dot(vWorld.xz, uEdges[i].xy) > uEdges[i].z) discard;
  vec3 n = normalize(vNormal);
  float facing = abs(dot(n, normalize(cameraPosition - vWorld)));
  float pen = uPen * uPixelRatio;
  // How far inside its outline, in pixels: on the sheet a sphere falls away as 1 - sin.
  float inside = 1.0 - sqrt(max(0.0, 1.0 - facing * facing));
  float rim = 1.0 - smoothstep(1.5 * pen, 2.7 * pen, inside / max(fwidth(inside), 1e-6));
  float turn = atan(vAround.y, vAround.x) / 6.2831853;
  float gap = smoothstep(0.58, 0.66, fract(turn * DASHES));
  rim *= 1.0 - uDashed * gap;
  // The line at the ears: what the drawing from above shows.
  float height = vWorld.y - uEars;
  float cut = 1.0 - smoothstep(0.5 * pen, 1.4 * pen, abs(height) / max(fwidth(height), 1e-6));
  float along = atan(n.z, n.x) / 6.2831853;
  cut *= 1.0 - uDashed * smoothstep(0.58, 0.66, fract(along * DASHES));
  cut *= 0.5 * smoothstep(0.03, 0.12, facing);
  float light = 0.5 + 0.5 * max(dot(gl_FrontFacing ? n : -n, uKey), 0.0);
  float shell = (0.08 + 0.42 * pow(1.0 - facing, 2.0)) * (gl_FrontFacing ? 1.0 : 0.45);
  float ink = max(rim, cut) * (gl_FrontFacing ? 1.0 : 0.55);
  vec3 lit = mix(uColour, vec3(1.0), (1.0 - uDark) * 0.25 * light * (1.0 - ink));
  float seen = mix(max(shell * light, 0.9 * ink), 0.3 * ink, uBehind);
  gl_FragColor = vec4(lit, uStrength * seen);
  #include <colorspace_fragment>
}`
    }`,
  });
}
