/** The few ways a surface is painted. All are made once and kept for the life of the scene. */
import {
  BackSide,
  type Color,
  DoubleSide,
  FrontSide,
  GreaterDepth,
  LessEqualDepth,
  ShaderMaterial,
  type Side,
} from 'three';
import type { Look } from './look';
import { TONES } from './tones';

const TONE_COUNT = `#define TONE_COUNT ${TONES.length}\n`;

const VERTEX = /* glsl */ `
attribute float tone;
attribute float openness;
varying vec3 vNormal;
varying vec3 vView;
varying float vTone;
varying float vOpen;
void main() {
  vec4 world = modelMatrix * vec4(position, 1.0);
  vNormal = mat3(modelMatrix) * normal;
  vView = cameraPosition - world.xyz;
  vTone = tone;
  vOpen = openness;
  gl_Position = projectionMatrix * viewMatrix * world;
}`;

const LIGHT = /* glsl */ `
uniform vec3 uKey;
uniform vec3 uLit;
uniform vec3 uShade;
vec3 paint(vec3 colour, vec3 n, float open) {
  float sky = 0.5 + 0.5 * n.y;
  float key = max(dot(n, uKey), 0.0);
  float light = clamp(0.30 + 0.30 * sky + 0.48 * key, 0.0, 1.0);
  light *= mix(0.42, 1.0, open);
  return colour * mix(uShade, uLit, light);
}`;

const shared = (look: Look) => ({
  uTones: look.uTones,
  uKey: look.uKey,
  uLit: look.uLit,
  uShade: look.uShade,
  uPaper: look.uPaper,
  uViewport: look.uViewport,
  uPixelRatio: look.uPixelRatio,
});

/** Opaque surfaces: soft sky light, one key light, darker where the cabin closes in. */
export function shadeMaterial(look: Look, side: Side = FrontSide): ShaderMaterial {
  return new ShaderMaterial({
    name: 'shade',
    side,
    uniforms: shared(look),
    polygonOffset: true,
    polygonOffsetFactor: 1,
    polygonOffsetUnits: 1,
    vertexShader: VERTEX,
    fragmentShader: `${TONE_COUNT}${LIGHT}${
      /* glsl */ `
uniform vec3 uTones[TONE_COUNT];
varying vec3 vNormal;
varying float vTone;
varying float vOpen;
void main() {
  vec3 n = normalize(vNormal);
  if (!gl_FrontFacing) n = -n;
  gl_FragColor = vec4(paint(uTones[int(vTone + 0.5)], n, vOpen), 1.0);
  #include <colorspace_fragment>
}`
    }`,
  });
}

/** Glass: a faint tint, clearer head-on, with the two slanted strokes an illustrator gives it. */
export function glassMaterial(look: Look): ShaderMaterial {
  return new ShaderMaterial({
    name: 'glass',
    side: DoubleSide,
    transparent: true,
    depthWrite: false,
    uniforms: shared(look),
    vertexShader: /* glsl */ `
attribute vec2 spot;
varying vec3 vNormal;
varying vec3 vView;
varying vec2 vSpot;
void main() {
  vec4 world = modelMatrix * vec4(position, 1.0);
  vNormal = mat3(modelMatrix) * normal;
  vView = cameraPosition - world.xyz;
  vSpot = spot;
  gl_Position = projectionMatrix * viewMatrix * world;
}`,
    fragmentShader: `${TONE_COUNT}${
      /* glsl */ `
uniform vec3 uTones[TONE_COUNT];
uniform vec3 uPaper;
varying vec3 vNormal;
varying vec3 vView;
varying vec2 vSpot;
float stroke(float x, float at, float width) {
  return smoothstep(at - width, at - width + 0.02, x) - smoothstep(at + width, at + width + 0.02, x);
}
void main() {
  float facing = abs(dot(normalize(vNormal), normalize(vView)));
  float slant = vSpot.x + 0.35 * vSpot.y;
  float sheen = stroke(slant, 0.42, 0.07) + 0.7 * stroke(slant, 0.58, 0.025);
  float tint = mix(0.34, 0.14, facing);
  if (!gl_FrontFacing) { tint *= 0.35; sheen *= 0.25; }
  vec3 colour = mix(uTones[0], vec3(1.0), 0.75 * clamp(sheen, 0.0, 1.0));
  gl_FragColor = vec4(colour, tint + 0.16 * clamp(sheen, 0.0, 1.0));
  #include <colorspace_fragment>
}`
    }`,
  });
}

/** A body's contour: its back faces, pushed outward by a pen's width. */
export function contourMaterial(look: Look, colour: Color, width: number): ShaderMaterial {
  return new ShaderMaterial({
    name: 'contour',
    side: BackSide,
    uniforms: { ...shared(look), uColour: { value: colour }, uWidth: { value: width } },
    vertexShader: /* glsl */ `
attribute vec3 smoothNormal;
uniform vec2 uViewport;
uniform float uPixelRatio;
uniform float uWidth;
void main() {
  vec4 clip = projectionMatrix * modelViewMatrix * vec4(position, 1.0);
  vec4 tip = projectionMatrix * modelViewMatrix * vec4(position + smoothNormal, 1.0);
  vec2 way = (tip.xy / tip.w - clip.xy / clip.w) * uViewport;
  float far = length(way);
  if (far > 1e-6) clip.xy += way / far * uWidth * uPixelRatio * 2.0 / uViewport * clip.w;
  gl_Position = clip;
}`,
    fragmentShader: /* glsl */ `
uniform vec3 uColour;
void main() {
  gl_FragColor = vec4(uColour, 1.0);
  #include <colorspace_fragment>
}`,
  });
}

/** A calm see-through figure: paler towards the middle, firmer at its outline. */
export function ghostMaterial(look: Look): ShaderMaterial {
  return new ShaderMaterial({
    name: 'ghost',
    transparent: true,
    depthWrite: false,
    depthFunc: LessEqualDepth,
    uniforms: shared(look),
    vertexShader: VERTEX,
    fragmentShader: `${TONE_COUNT}${
      /* glsl */ `
uniform vec3 uTones[TONE_COUNT];
uniform vec3 uKey;
varying vec3 vNormal;
varying vec3 vView;
varying float vTone;
void main() {
  vec3 n = normalize(vNormal);
  float rim = 1.0 - abs(dot(n, normalize(vView)));
  float light = 0.75 + 0.35 * max(dot(n, uKey), 0.0);
  gl_FragColor = vec4(uTones[int(vTone + 0.5)] * light, 0.26 + 0.5 * rim * rim);
  #include <colorspace_fragment>
}`
    }`,
  });
}

/** Lays down depth only, so a see-through figure does not show its own far side. */
export function depthOnlyMaterial(): ShaderMaterial {
  return new ShaderMaterial({
    name: 'depth-only',
    colorWrite: false,
    vertexShader:
      'void main() { gl_Position = projectionMatrix * modelViewMatrix * vec4(position, 1.0); }',
    fragmentShader: 'void main() { gl_FragColor = vec4(1.0); }',
  });
}

/** A volume nothing may be mounted in: hatched on the sheet, so it does not hang on colour. */
export function hatchMaterial(look: Look, colour: Color, spacing = 9): ShaderMaterial {
  return new ShaderMaterial({
    name: 'hatch',
    transparent: true,
    depthWrite: false,
    side: DoubleSide,
    uniforms: { ...shared(look), uColour: { value: colour }, uSpacing: { value: spacing } },
    vertexShader:
      'void main() { gl_Position = projectionMatrix * modelViewMatrix * vec4(position, 1.0); }',
    fragmentShader: /* glsl */ `
uniform vec3 uColour;
uniform float uPixelRatio;
uniform float uSpacing;
void main() {
  float across = (gl_FragCoord.x - gl_FragCoord.y) / uPixelRatio / uSpacing;
  float near = abs(fract(across) - 0.5) * uSpacing;
  float line = 1.0 - smoothstep(0.35, 1.15, near);
  gl_FragColor = vec4(uColour, 0.07 + (gl_FrontFacing ? 0.42 : 0.12) * line);
  #include <colorspace_fragment>
}`,
  });
}

/** The pale trace of something hidden behind something else. */
export function behindMaterial(look: Look, colour: Color): ShaderMaterial {
  const material = hatchMaterial(look, colour, 4);
  material.name = 'behind';
  material.depthFunc = GreaterDepth;
  return material;
}
