/**
 * Spherical aberration worked out ring by ring, in waves, as a law to hold figures to: it shares nothing with core.
 * Rings of equal area, and least squares by normal equations.
 */
const COUNT = 40_000;
const RINGS = Array.from({ length: COUNT }, (_, i) => (i + 0.5) / COUNT);

const mean = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0) / values.length;

interface Left {
  rms: number;
  strehl: number;
  /** From the highest to the lowest, edge and middle included. */
  waves: number;
}

/** What is left of `way(sin θ)` after piston and the best share of `focus(sin θ)`, for sines up to `greatest`. */
function left(way: (sine: number) => number, focus: (sine: number) => number, greatest: number, wavelength: number): Left {
  const sines = RINGS.map((u) => greatest * Math.sqrt(u));
  const w = sines.map(way);
  const f = sines.map(focus);
  const [w0, f0] = [mean(w), mean(f)];
  const slope = mean(w.map((x, i) => (x - w0) * ((f[i] as number) - f0))) / mean(f.map((x) => (x - f0) ** 2));
  const rest = (x: number, y: number): number => (x - w0 - slope * (y - f0)) / wavelength;
  const waves = w.map((x, i) => rest(x, f[i] as number));
  const ends = [0, greatest].map((s) => rest(way(s), focus(s)));
  return {
    rms: Math.sqrt(mean(waves.map((x) => x * x))),
    strehl: mean(waves.map((x) => Math.cos(2 * Math.PI * x))) ** 2 + mean(waves.map((x) => Math.sin(2 * Math.PI * x))) ** 2,
    waves: waves.reduce((a, b) => Math.max(a, b), Math.max(...ends)) - waves.reduce((a, b) => Math.min(a, b), Math.min(...ends)),
  };
}

/**
 * An objective in air with its object `nearer` mm too near, the stage focused on a sensor that asks for that: the
 * sensor's sphere, `m² nearer (1 − cos θ')` with `sin θ = m sin θ'`, less the stage's `1 − cos θ`.
 */
export const offConjugate = (nearer: number, na: number, m: number, wavelength: number): Left =>
  left(
    (sine) => m * m * nearer * (1 - Math.cos(Math.asin(sine / m))),
    (sine) => 1 - Math.cos(Math.asin(sine)),
    na,
    wavelength,
  );

/** Plates in air over the subject, each `[thickness mm, index]`: Snell's law, refocused with the stage. */
export const throughPlates = (plates: readonly (readonly [number, number])[], na: number, wavelength: number): Left =>
  left(
    (sine) => plates.reduce((sum, [d, n]) => sum + d * (n * Math.cos(Math.asin(sine / n)) - Math.cos(Math.asin(sine))), 0),
    (sine) => 1 - Math.cos(Math.asin(sine)),
    na,
    wavelength,
  );
