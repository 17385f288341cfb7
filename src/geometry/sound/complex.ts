/** A complex number: real and imaginary part. */
export type Complex = readonly [number, number];

export const plus = (a: Complex, b: Complex): Complex => [a[0] + b[0], a[1] + b[1]];
export const times = (a: Complex, b: Complex): Complex => [
  a[0] * b[0] - a[1] * b[1],
  a[0] * b[1] + a[1] * b[0],
];
export const over = (a: Complex, b: Complex): Complex => {
  const size = b[0] * b[0] + b[1] * b[1];
  return [(a[0] * b[0] + a[1] * b[1]) / size, (a[1] * b[0] - a[0] * b[1]) / size];
};
export const modulus = (a: Complex): number => Math.sqrt(a[0] * a[0] + a[1] * a[1]);
/** A phasor of this length and angle, radians. */
export const polar = (size: number, angle: number): Complex => [
  size * Math.cos(angle),
  size * Math.sin(angle),
];
