/** Random numbers that are the same for the same seed, and the normal distribution. */

/** Random numbers in [0, 1), the same for the same seed. Source: mulberry32, Ettinger 2017 (public domain). */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** Normal numbers of mean 0 and deviation 1 made of even ones. Source: Box and Muller 1958, Ann. Math. Stat. 29:610. */
export const normal = (random: () => number) => (): number =>
  Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());

/**
 * Share of a normal distribution below a value, within 7.5e-8.
 * Source: Abramowitz and Stegun 1964, Handbook of Mathematical Functions, 26.2.17.
 */
export function normalShare(value: number): number {
  const t = 1 / (1 + 0.2316419 * Math.abs(value));
  const series = t * (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
  const above = (Math.exp(-(value ** 2) / 2) / Math.sqrt(2 * Math.PI)) * series;
  return value > 0 ? 1 - above : above;
}
