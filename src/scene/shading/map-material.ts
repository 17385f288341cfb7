/**
 * A map painted on panels: colours between the spots' numbers, lines of equal value, hatched where
 * the speaker does not fit, cross-hatched where the place is kept clear. Its colours are not
 * shaded, so that they are those of the legend.
 */
import {
  Color,
  DataTexture,
  FloatType,
  FrontSide,
  NearestFilter,
  RGBAFormat,
  ShaderMaterial,
  SRGBColorSpace,
  Vector2,
} from 'three';
import { CIVIDIS } from '../../plan/cividis';
import { CHANNELS } from '../map/atlas';
import type { Look } from './look';

/** More lines of equal value than this nobody tells apart. */
export const MOST_LEVELS = 16;

/** The 256 colours as a texture; the caller disposes it. */
export function rampTexture(): DataTexture {
  const count = CIVIDIS.length / 3;
  const data = new Uint8Array(4 * count);
  for (let k = 0; k < count; k++) data.set([...CIVIDIS.subarray(3 * k, 3 * k + 3), 255], 4 * k);
  const texture = new DataTexture(data, count, 1);
  texture.colorSpace = SRGBColorSpace;
  texture.needsUpdate = true;
  return texture;
}

/** Room for a map's numbers; the caller disposes it. */
export function atlasTexture(width: number, height: number): DataTexture {
  const texture = new DataTexture(
    new Float32Array(CHANNELS * width * height),
    width,
    height,
    RGBAFormat,
    FloatType,
  );
  // Floats are not blended everywhere: the shader does it.
  texture.minFilter = texture.magFilter = NearestFilter;
  return texture;
}

export interface MapUniforms {
  uAtlas: { value: DataTexture | null };
  uRamp: { value: DataTexture };
  /** Values at the two ends of the colours. */
  uRange: { value: Vector2 };
  uLevels: { value: number[] };
  uLevelCount: { value: number };
}

export function mapMaterial(look: Look, ramp: DataTexture): ShaderMaterial {
  const own: MapUniforms = {
    uAtlas: { value: null },
    uRamp: { value: ramp },
    uRange: { value: new Vector2(0, 1) },
    uLevels: { value: new Array<number>(MOST_LEVELS).fill(0) },
    uLevelCount: { value: 0 },
  };
  return new ShaderMaterial({
    name: 'map',
    side: FrontSide,
    uniforms: {
      ...own,
      uPaper: look.uPaper,
      uInk: look.uInk,
      uPixelRatio: look.uPixelRatio,
      uLight: { value: new Color('#fffaf0') },
      uDeep: { value: new Color('#14120e') },
    },
    vertexShader: /* glsl */ `
attribute vec2 spot;
attribute vec4 plot; // left, top, columns, rows
varying vec2 vSpot;
flat varying vec4 vPlot;
void main() {
  vSpot = spot;
  vPlot = plot;
  gl_Position = projectionMatrix * viewMatrix * (modelMatrix * vec4(position, 1.0));
}`,
    fragmentShader: /* glsl */ `
#define MOST_LEVELS ${MOST_LEVELS}
precision highp sampler2D;
uniform sampler2D uAtlas;
uniform sampler2D uRamp;
uniform vec2 uRange;
uniform float uLevels[MOST_LEVELS];
uniform int uLevelCount;
uniform vec3 uPaper;
uniform vec3 uInk;
uniform vec3 uLight;
uniform vec3 uDeep;
uniform float uPixelRatio;
varying vec2 vSpot;
flat varying vec4 vPlot;

vec4 texel(vec2 cell) {
  vec2 at = vPlot.xy + clamp(cell, vec2(0.0), vPlot.zw - 1.0);
  return texelFetch(uAtlas, ivec2(at + 0.5), 0);
}

// Value, how much of it is known, how much does not fit, how much is kept clear.
vec4 between(vec2 place) {
  vec2 base = floor(place);
  vec2 f = place - base;
  vec4 sum = vec4(0.0);
  for (int i = 0; i < 4; i++) {
    vec2 step_ = vec2(float(i % 2), float(i / 2));
    vec2 w = mix(1.0 - f, f, step_);
    vec4 t = texel(base + step_);
    sum += w.x * w.y * vec4(t.x * t.y, t.yzw);
  }
  return sum;
}

float hatch(float across, float spacing) {
  float near = abs(fract(across / uPixelRatio / spacing) - 0.5) * spacing;
  return 1.0 - smoothstep(0.35, 1.15, near);
}

float line(float value, float slope, float level, float half_) {
  return 1.0 - smoothstep(half_ - 0.5, half_ + 0.5, abs(value - level) / max(slope, 1e-9));
}

void main() {
  vec4 here = between(vSpot * vPlot.zw - 0.5);
  float known = here.y;
  float value = here.x / max(known, 1e-6);
  float share = clamp((value - uRange.x) / max(uRange.y - uRange.x, 1e-9), 0.0, 1.0);
  float slope = fwidth(value);
  float misfitSlope = fwidth(here.z);
  bool painted = known > 0.5;
  bool misfit = here.z > 0.5;
  if (!painted && !misfit) discard;
  vec3 colour = painted ? texture2D(uRamp, vec2((share * 255.0 + 0.5) / 256.0, 0.5)).rgb : uPaper;
  vec3 pen = share < 0.55 && painted ? uLight : uDeep;
  if (painted) {
    float drawn = 0.0;
    for (int i = 0; i < MOST_LEVELS; i++) {
      if (i >= uLevelCount) break;
      drawn = max(drawn, line(value, slope, uLevels[i], 0.42 * uPixelRatio));
    }
    colour = mix(colour, pen, drawn * (misfit ? 0.5 : 0.85));
  }
  if (misfit) {
    float across = gl_FragCoord.x - gl_FragCoord.y;
    float other = gl_FragCoord.x + gl_FragCoord.y;
    float strokes = hatch(across, 8.0);
    if (here.w > 0.5) strokes = max(strokes, hatch(other, 8.0));
    colour = mix(colour, uPaper, 0.5);
    colour = mix(colour, uInk, 0.6 * strokes);
  }
  float rim = misfitSlope > 1e-6 ? line(here.z, misfitSlope, 0.5, 0.42 * uPixelRatio) : 0.0;
  colour = mix(colour, uInk, 0.8 * rim);
  gl_FragColor = vec4(colour, 1.0);
  #include <colorspace_fragment>
}`,
  });
}
