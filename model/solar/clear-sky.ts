import { sinDeg } from './angles.ts';
import { pressureAtAltitude, relativeAirMass, SEA_LEVEL_PRESSURE_PA } from './atmosphere.ts';
import { extraterrestrialNormal } from './extraterrestrial.ts';

/** Global and diffuse on the horizontal, direct on the plane normal to the sun, W/m2. */
export interface Irradiance {
  readonly ghi: number;
  readonly dni: number;
  readonly dhi: number;
}

const DARK: Irradiance = { ghi: 0, dni: 0, dhi: 0 };

interface ClearSkyTerms {
  /** Sine of the apparent elevation. */
  readonly cosZenith: number;
  /** Pressure-corrected (absolute) air mass. */
  readonly airMass: number;
  readonly altitudeM: number;
  readonly linkeTurbidity: number;
  readonly extraterrestrialWm2: number;
}

/**
 * Clear sky from its optical terms.
 *
 * Source: Ineichen and Perez 2002, "A new airmass independent formulation for the Linke turbidity coefficient", Solar
 * Energy 73(3):151-157, equations for Ghc and Bnc with fh1, fh2, cg1, cg2 as printed there.
 */
export function ineichenPerez(terms: ClearSkyTerms): Irradiance {
  const { cosZenith, airMass, altitudeM: h, linkeTurbidity: tl, extraterrestrialWm2: i0 } = terms;
  const fh1 = Math.exp(-h / 8000);
  const fh2 = Math.exp(-h / 1250);
  const cg1 = 5.09e-5 * h + 0.868;
  const cg2 = 3.92e-5 * h + 0.0387;
  const ghi = cg1 * i0 * cosZenith * Math.exp(-cg2 * airMass * (fh1 + fh2 * (tl - 1)));
  const b = 0.664 + 0.163 / fh1;
  const beam = b * i0 * Math.exp(-0.09 * airMass * (tl - 1));
  // At low turbidity and low sun the first form would exceed the global; the paper's second form caps it.
  const cap = Math.max(0, (ghi * (1 - (0.1 - 0.2 * Math.exp(-tl)) / (0.1 + 0.882 / fh1))) / cosZenith);
  const dni = Math.min(beam, cap);
  return { ghi, dni, dhi: ghi - dni * cosZenith };
}

/**
 * Irradiance under a cloudless sky, W/m2; zero while the sun is down.
 *
 * Source: `ineichenPerez` above with the air mass of Kasten and Young 1989 scaled by the pressure at the altitude.
 * @param elevationDeg apparent elevation of the sun
 * @param altitudeM above sea level
 * @param linkeTurbidity 1 (clean dry air) to about 8; 2 to 3 on mountains, 3 on a plain, above 4 in large cities
 */
export function clearSky(input: {
  utc: Date;
  elevationDeg: number;
  altitudeM: number;
  linkeTurbidity: number;
}): Irradiance {
  const { utc, elevationDeg, altitudeM, linkeTurbidity } = input;
  return clearSkyThrough({
    elevationDeg,
    relativeAirMass: relativeAirMass(elevationDeg),
    extraterrestrialWm2: extraterrestrialNormal(utc),
    pressurePa: pressureAtAltitude(altitudeM),
    altitudeM,
    linkeTurbidity,
  });
}

/** The same for a day whose sun and air were worked out before. */
export function clearSkyThrough(input: {
  elevationDeg: number;
  relativeAirMass: number;
  extraterrestrialWm2: number;
  pressurePa: number;
  altitudeM: number;
  linkeTurbidity: number;
}): Irradiance {
  const { elevationDeg, altitudeM, linkeTurbidity, extraterrestrialWm2 } = input;
  if (elevationDeg <= 0) return DARK;
  const airMass = (input.relativeAirMass * input.pressurePa) / SEA_LEVEL_PRESSURE_PA;
  return ineichenPerez({
    cosZenith: sinDeg(elevationDeg),
    airMass,
    altitudeM,
    linkeTurbidity,
    extraterrestrialWm2,
  });
}
