/** Sixty cases of clear sky, transposition and split, computed with pvlib-python, quantity by quantity beside ours. */
import {
  clearSky,
  extraterrestrialNormal,
  irradianceOnPlane,
  type PlaneIrradiance,
  type SunPosition,
  splitGlobal,
  sunPosition,
} from '../../model/index.ts';
import { degrees } from '../../model/solar/angles.ts';
import { cosIncidence } from '../../model/solar/transposition.ts';
import reference from './irradiance-pvlib.json';

export type IrradianceCase = (typeof reference.cases)[number];

export const IRRADIANCE_CASES: readonly IrradianceCase[] = reference.cases;

export interface Pair {
  readonly what: string;
  readonly ours: number;
  readonly theirs: number;
}

const sunOf = (c: IrradianceCase): SunPosition => sunPosition(new Date(c.utc), c.lat_deg, c.lon_deg);

/** The plane of a case under the sky of the reference. */
export function planeOf(c: IrradianceCase): PlaneIrradiance {
  return irradianceOnPlane({
    utc: new Date(c.utc),
    sun: sunOf(c),
    dni: c.clear_dni_w_m2,
    dhi: c.clear_dhi_w_m2,
    ghi: c.clear_ghi_w_m2,
    tiltDeg: c.surface_tilt_deg,
    azimuthDeg: c.surface_azimuth_deg,
    albedo: c.albedo,
  });
}

/** Irradiances of one case, W/m2. */
export function irradiancePairs(c: IrradianceCase): Pair[] {
  const utc = new Date(c.utc);
  const { elevationDeg } = sunOf(c);
  const sky = clearSky({ utc, elevationDeg, altitudeM: c.altitude_m, linkeTurbidity: c.linke_turbidity });
  const plane = planeOf(c);
  const split = splitGlobal({ utc, elevationDeg, ghi: c.erbs.ghi_w_m2 });
  return [
    { what: 'extraterrestrial', ours: extraterrestrialNormal(utc), theirs: c.extra_normal_w_m2 },
    { what: 'clear ghi', ours: sky.ghi, theirs: c.clear_ghi_w_m2 },
    { what: 'clear dni', ours: sky.dni, theirs: c.clear_dni_w_m2 },
    { what: 'clear dhi', ours: sky.dhi, theirs: c.clear_dhi_w_m2 },
    { what: 'beam', ours: plane.beam, theirs: c.beam_on_surface_w_m2 },
    { what: 'isotropic', ours: plane.isotropic, theirs: c.perez_isotropic_w_m2 },
    { what: 'circumsolar', ours: plane.circumsolar, theirs: c.perez_circumsolar_w_m2 },
    { what: 'horizon', ours: plane.horizon, theirs: c.perez_horizon_w_m2 },
    { what: 'ground', ours: plane.ground, theirs: c.ground_reflected_w_m2 },
    { what: 'erbs dni', ours: split.dni, theirs: c.erbs.dni_w_m2 },
    { what: 'erbs dhi', ours: split.dhi, theirs: c.erbs.dhi_w_m2 },
  ];
}

/** Share of what is allowed, 0.5 % or 1 W/m2, whichever is larger, that a pair differs by. */
export function shareOfAllowed({ ours, theirs }: Pair): number {
  return Math.abs(ours - theirs) / Math.max(1, 0.005 * Math.abs(theirs));
}

/** Our angle of incidence minus theirs, degrees. */
export function incidenceErrorDeg(c: IrradianceCase): number {
  const angle = degrees(Math.acos(cosIncidence(sunOf(c), c.surface_tilt_deg, c.surface_azimuth_deg)));
  return Math.abs(angle - c.angle_of_incidence_deg);
}

/** The largest of some figures; NaN when one of them is. */
export const largestOf = (figures: readonly number[]): number => Math.max(0, ...figures);
