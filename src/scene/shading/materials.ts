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
varying float vRear;
void main() {
  vec4 world = modelMatrix * vec4(position, 1.0);
  vNormal = mat3(modelMatrix) * normal;
  vView = cameraPosition - world.xyz;
  vTone = tone;
  vOpen = openness;
  vRear = world.z; // car X: the root turns it so
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
  light *= mix(0.3, 1.06, open);
  return colour * mix(uShade, uLit, light);
}`;

const shared = (look: Look) => ({
  uTones: look.uTones,
  uKey: look.uKey,
  uLit: look.uLit,
  uShade: look.uShade,
  uPaper: look.uPaper,
  uVignette: look.uVignette,
  uViewport: look.uViewport,
  uPixelRatio: look.uPixelRatio,
  uPen: look.uPen,
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
uniform vec3 uPaper;
uniform vec2 uVignette;
varying float vTone;
varying float vOpen;
varying float vRear;
void main() {
  vec3 n = normalize(vNormal);
  if (!gl_FrontFacing) n = -n;
  vec3 colour = paint(uTones[int(vTone + 0.5)], n, vOpen);
  // As a wash runs out towards the edge of a sheet.
  colour = mix(colour, uPaper, 0.72 * smoothstep(uVignette.x, uVignette.y, vRear));
  gl_FragColor = vec4(colour, 1.0);
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
  // Seen from the seat the strokes would stand in the road.
  sheen *= smoothstep(900.0, 2600.0, length(vView));
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
export function contourMaterial(
  look: Look,
  colour: Color,
  width: number,
  transparent = false,
): ShaderMaterial {
  return new ShaderMaterial({
    name: 'contour',
    // Laid over in its turn, for figures whose depth is laid down late.
    transparent,
    side: BackSide,
    uniforms: { ...shared(look), uColour: { value: colour }, uWidth: { value: width } },
    vertexShader: /* glsl */ `
attribute vec3 smoothNormal;
uniform vec2 uViewport;
uniform float uPixelRatio;
uniform float uPen;
uniform float uWidth;
void main() {
  vec4 clip = projectionMatrix * modelViewMatrix * vec4(position, 1.0);
  // Not made unit length on the sheet: a normal that faces the eye has no way to go.
  vec2 way = (mat3(modelViewMatrix) * smoothNormal).xy;
  clip.xy += way * uWidth * uPen * uPixelRatio * 2.0 / uViewport * clip.w;
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
/** @param strength 1 for the listener in view, less for the others */
export function ghostMaterial(look: Look, strength: number): ShaderMaterial {
  return new ShaderMaterial({
    name: 'ghost',
    transparent: true,
    depthWrite: false,
    depthFunc: LessEqualDepth,
    uniforms: { ...shared(look), uStrength: { value: strength } },
    vertexShader: VERTEX,
    fragmentShader: `${TONE_COUNT}${
      /* glsl */ `
uniform vec3 uTones[TONE_COUNT];
uniform vec3 uKey;
uniform float uStrength;
varying vec3 vNormal;
varying vec3 vView;
varying float vTone;
void main() {
  vec3 n = normalize(vNormal);
  float rim = 1.0 - abs(dot(n, normalize(vView)));
  float light = 0.75 + 0.35 * max(dot(n, uKey), 0.0);
  gl_FragColor = vec4(uTones[int(vTone + 0.5)] * light, uStrength * (0.26 + 0.5 * rim * rim));
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
    // The very same sum as the figure's, or rounding tears holes into it.
    vertexShader: VERTEX,
    polygonOffset: true,
    polygonOffsetFactor: 1,
    polygonOffsetUnits: 1,
    transparent: true,
    fragmentShader: 'void main() { gl_FragColor = vec4(1.0); }',
  });
}

/** A volume nothing may be mounted in: hatched on the sheet, so it does not hang on colour. */
export function hatchMaterial(
  look: Look,
  colour: Color,
  spacing = 9,
  overAll = false,
): ShaderMaterial {
  return new ShaderMaterial({
    name: 'hatch',
    transparent: true,
    depthWrite: false,
    // Laid over all, the far side of a body would only thicken the hatch of the near one.
    depthTest: !overAll,
    side: overAll ? FrontSide : DoubleSide,
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
  gl_FragColor = vec4(uColour, 0.06 + (gl_FrontFacing ? 0.36 : 0.1) * line);
  #include <colorspace_fragment>
}`,
  });
}

/** The soft shade under the car. */
export function groundMaterial(look: Look): ShaderMaterial {
  return new ShaderMaterial({
    name: 'ground',
    transparent: true,
    depthWrite: false,
    uniforms: { ...shared(look), uDark: look.uDark },
    vertexShader: /* glsl */ `
varying vec2 vSpot;
void main() {
  vSpot = uv * 2.0 - 1.0;
  gl_Position = projectionMatrix * modelViewMatrix * vec4(position, 1.0);
}`,
    fragmentShader: /* glsl */ `
uniform float uDark;
varying vec2 vSpot;
void main() {
  // A rounded box fades more as a car's shade does than an ellipse.
  vec2 q = abs(vSpot);
  float d = pow(pow(q.x, 3.0) + pow(q.y, 3.0), 1.0 / 3.0);
  float shade = 1.0 - smoothstep(0.35, 1.0, d);
  gl_FragColor = vec4(vec3(0.05, 0.045, 0.04), shade * mix(0.2, 0.5, uDark));
}`,
  });
}

/** The pale trace of a speaker that something stands before. */
export function traceMaterial(look: Look, colour: Color): ShaderMaterial {
  const material = hatchMaterial(look, colour, 3.5);
  material.name = 'trace';
  material.side = FrontSide;
  material.depthFunc = GreaterDepth;
  return material;
}
