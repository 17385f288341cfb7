/**
 * Ink: lines of a set width in CSS pixels, smooth-edged without multisampling, fainter along
 * panels seen from behind (those the cutaway looks through), dashed where asked.
 */
import { DoubleSide, GreaterDepth, LessEqualDepth, ShaderMaterial } from 'three';
import type { Look } from './look';
import { TONES } from './tones';

export interface InkLook {
  /** Only where something stands before the line; for the pale trace of a hidden line. */
  behind?: boolean;
  /** 0 to 1, over all lines. */
  opacity?: number;
  /** How much of a line remains along a panel the eye looks through. */
  seeThrough?: number;
  /** How far lines stand off towards the eye, mm, so surfaces they lie on do not swallow them. */
  lift?: number;
  /** Drawn whatever stands before it. */
  overAll?: boolean;
}

export function inkMaterial(look: Look, options: InkLook = {}): ShaderMaterial {
  const { behind = false, opacity = 1, seeThrough = 0.2, lift = 7, overAll = false } = options;
  return new ShaderMaterial({
    name: 'ink',
    side: DoubleSide,
    transparent: true,
    depthWrite: false,
    depthTest: !overAll,
    depthFunc: behind ? GreaterDepth : LessEqualDepth,
    uniforms: {
      uTones: look.uTones,
      uViewport: look.uViewport,
      uPixelRatio: look.uPixelRatio,
      uPen: look.uPen,
      uOpacity: { value: opacity },
      uSeeThrough: { value: seeThrough },
      uLift: { value: lift },
    },
    vertexShader: /* glsl */ `
attribute vec3 start;
attribute vec3 end;
attribute vec3 faceA;
attribute vec3 faceB;
attribute vec4 pen; // width px (below 0: blunt ends), tone, dash px (0: solid, below 0: dash-dot), strength
uniform vec2 uViewport;
uniform float uPixelRatio;
uniform float uPen;
uniform float uSeeThrough;
uniform float uLift;
varying float vAcross;
varying float vHalf;
varying float vTone;
varying float vStrength;
varying float vDash;
varying float vAlong;
void main() {
  vec4 p = modelViewMatrix * vec4(start, 1.0);
  vec4 q = modelViewMatrix * vec4(end, 1.0);
  // A line that runs behind the eye is cut just before it.
  float near = -1.0;
  if (p.z > near && q.z > near) { gl_Position = vec4(2.0, 2.0, 2.0, 1.0); return; }
  if (p.z > near) p = mix(q, p, (near - q.z) / (p.z - q.z));
  if (q.z > near) q = mix(p, q, (near - p.z) / (q.z - p.z));
  p.xyz *= 1.0 - uLift / max(length(p.xyz), uLift * 2.0);
  q.xyz *= 1.0 - uLift / max(length(q.xyz), uLift * 2.0);
  vec4 a = projectionMatrix * p;
  vec4 b = projectionMatrix * q;
  vec2 screenA = a.xy / a.w * uViewport * 0.5;
  vec2 screenB = b.xy / b.w * uViewport * 0.5;
  vec2 way = screenB - screenA;
  float run = length(way);
  way = run > 1e-4 ? way / run : vec2(1.0, 0.0);
  vec2 across = vec2(-way.y, way.x);
  vHalf = abs(pen.x) * uPen * uPixelRatio * 0.5;
  float reach = vHalf + 1.0;
  bool first = position.x < 0.5;
  vec4 clip = first ? a : b;
  vec2 shift = across * position.y * reach + way * (first ? -1.0 : 1.0) * vHalf * (pen.x < 0.0 ? 0.0 : 0.7);
  clip.xy += shift * 2.0 / uViewport * clip.w;
  gl_Position = clip;
  vAcross = position.y * reach;
  vAlong = first ? 0.0 : run;
  vTone = pen.y;
  vDash = pen.z * uPixelRatio;
  float faces = 1.0;
  if (dot(faceA, faceA) > 0.5) {
    vec3 eye = (inverse(modelViewMatrix) * vec4(0.0, 0.0, 0.0, 1.0)).xyz;
    vec3 toEye = normalize(eye - (start + end) * 0.5);
    faces = dot(faceA, toEye);
    if (dot(faceB, faceB) > 0.5) faces = max(faces, dot(faceB, toEye));
    faces = mix(uSeeThrough, 1.0, smoothstep(-0.04, 0.04, faces));
  }
  vStrength = pen.w * faces;
}`,
    fragmentShader: /* glsl */ `#define TONE_COUNT ${TONES.length}
uniform vec3 uTones[TONE_COUNT];
uniform float uOpacity;
varying float vAcross;
varying float vHalf;
varying float vTone;
varying float vStrength;
varying float vDash;
varying float vAlong;
void main() {
  float half_ = max(vHalf, 0.5);
  float alpha = 1.0 - smoothstep(half_ - 0.5, half_ + 0.5, abs(vAcross));
  // A pen thinner than a pixel is a paler pixel.
  alpha *= min(1.0, vHalf * 2.0) * vStrength * uOpacity;
  if (vDash > 0.0 && fract(vAlong / (vDash * 1.6)) > 0.625) discard;
  if (vDash < 0.0) {
    float at = fract(vAlong / (-vDash * 1.5));
    if (at > 0.667 && (at < 0.78 || at > 0.887)) discard;
  }
  if (alpha < 0.01) discard;
  gl_FragColor = vec4(uTones[int(vTone + 0.5)], alpha);
  #include <colorspace_fragment>
}`,
  });
}
