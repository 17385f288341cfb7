/**
 * The discrete Fourier transform in place, X[k] = Σ x[n]·exp(∓2πikn/N), not scaled: J. W. Cooley and
 * J. W. Tukey, "An algorithm for the machine calculation of complex Fourier series", Mathematics of
 * Computation 19, 1965.
 * @param inverse the other sign; dividing by N is left to the caller
 * @throws RangeError where the length is no power of two, or the parts differ
 */
export function fourierInPlace(re: Float64Array, im: Float64Array, inverse = false): void {
  const n = re.length;
  if (n < 1 || (n & (n - 1)) !== 0 || im.length !== n)
    throw new RangeError(
      `fourierInPlace: expected two parts of a power of two, got ${n} and ${im.length}`,
    );
  for (let i = 1, j = 0; i < n; i++) {
    let bit = n >> 1;
    for (; j & bit; bit >>= 1) j ^= bit;
    j ^= bit;
    if (i < j) {
      [re[i], re[j]] = [re[j] as number, re[i] as number];
      [im[i], im[j]] = [im[j] as number, im[i] as number];
    }
  }
  // One table of angles: multiplying them up loses digits over long lengths.
  const half = n >> 1;
  const cos = new Float64Array(half);
  const sin = new Float64Array(half);
  for (let k = 0; k < half; k++) {
    const angle = ((inverse ? 2 : -2) * Math.PI * k) / n;
    cos[k] = Math.cos(angle);
    sin[k] = Math.sin(angle);
  }
  for (let span = 2; span <= n; span *= 2) {
    const [middle, stride] = [span / 2, n / span];
    for (let start = 0; start < n; start += span) {
      for (let k = 0; k < middle; k++) {
        const [a, b] = [start + k, start + k + middle];
        const [c, s] = [cos[k * stride] as number, sin[k * stride] as number];
        const [x, y] = [re[b] as number, im[b] as number];
        const [u, v] = [x * c - y * s, x * s + y * c];
        re[b] = (re[a] as number) - u;
        im[b] = (im[a] as number) - v;
        re[a] = (re[a] as number) + u;
        im[a] = (im[a] as number) + v;
      }
    }
  }
}
