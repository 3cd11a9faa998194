/**
 * Finishes of enclosures, new and after some years outdoors: what share of the sun they take in and how well they radiate.
 * Dirt brings white and dark finishes towards each other, bare metal loses its shine.
 */

/** Solar absorptance and long-wave emittance, 0 to 1. */
export interface SurfaceProperties {
  readonly solarAbsorptance: number;
  readonly emittance: number;
}

export interface Finish {
  readonly label: string;
  readonly new: SurfaceProperties;
  readonly weathered: SurfaceProperties;
  /** Where the figures come from. */
  readonly source: string;
}

const handbook = "Mechanical Engineers' Handbook vol. 4 table 19";
const spacecraft = 'Fortescue et al., Spacecraft Systems Engineering, table 11.3';
const memory = 'weathered: value from memory';

export const FINISHES = {
  whitePaint: {
    label: 'white paint or white plastic',
    new: { solarAbsorptance: 0.2, emittance: 0.9 },
    weathered: { solarAbsorptance: 0.35, emittance: 0.9 },
    source: `${handbook}: white paints 0.12 to 0.16; ${spacecraft}: white silicone 0.26; ${memory}`,
  },
  lightGreyPaint: {
    label: 'light grey paint or plastic',
    new: { solarAbsorptance: 0.45, emittance: 0.9 },
    weathered: { solarAbsorptance: 0.5, emittance: 0.9 },
    source: 'textbook tables 0.40 to 0.60, value from memory',
  },
  beigePaint: {
    label: 'beige or cream paint or plastic',
    new: { solarAbsorptance: 0.4, emittance: 0.9 },
    weathered: { solarAbsorptance: 0.5, emittance: 0.9 },
    source: 'oil paint, light cream 0.30 (Spanish engineering table); textbook tables 0.40 to 0.50, value from memory',
  },
  greenPaint: {
    label: 'dark green paint',
    new: { solarAbsorptance: 0.85, emittance: 0.9 },
    weathered: { solarAbsorptance: 0.85, emittance: 0.9 },
    source: 'painted sheet, green 0.82 (Mansoura University); textbook tables 0.85, value from memory',
  },
  darkGreyPaint: {
    label: 'dark grey or brown paint',
    new: { solarAbsorptance: 0.85, emittance: 0.9 },
    weathered: { solarAbsorptance: 0.85, emittance: 0.9 },
    source: 'painted sheet, brown 0.88 (Mansoura University)',
  },
  blackPaint: {
    label: 'black paint or plastic',
    new: { solarAbsorptance: 0.95, emittance: 0.9 },
    weathered: { solarAbsorptance: 0.92, emittance: 0.9 },
    source: `${handbook}: flat black lacquer 0.96, 0.95; ${spacecraft}: black epoxy 0.95, 0.85; ${memory}`,
  },
  aluminiumPaint: {
    label: 'aluminium paint',
    new: { solarAbsorptance: 0.37, emittance: 0.44 },
    weathered: { solarAbsorptance: 0.5, emittance: 0.5 },
    source: `${spacecraft}: silver paint; ${memory}`,
  },
  bareAluminium: {
    label: 'bare aluminium',
    new: { solarAbsorptance: 0.24, emittance: 0.08 },
    weathered: { solarAbsorptance: 0.4, emittance: 0.2 },
    source: `${spacecraft}: aluminium polished 0.24, 0.08; ${memory}`,
  },
  stainlessSteel: {
    label: 'bare stainless steel',
    new: { solarAbsorptance: 0.37, emittance: 0.6 },
    weathered: { solarAbsorptance: 0.5, emittance: 0.6 },
    source: `${handbook}: stainless 301 polished, absorptance 0.37, emittance 0.60; ${memory}`,
  },
  galvanisedSteel: {
    label: 'bare galvanised steel',
    new: { solarAbsorptance: 0.64, emittance: 0.23 },
    weathered: { solarAbsorptance: 0.8, emittance: 0.28 },
    source: 'galvanised iron new 0.64 (Spanish engineering table); emittance and weathered: value from memory',
  },
} as const satisfies Record<string, Finish>;

export type FinishName = keyof typeof FINISHES;

export const FINISH_NAMES = Object.keys(FINISHES) as [FinishName, ...FinishName[]];

export const FINISH_STATES = ['new', 'weathered'] as const;
