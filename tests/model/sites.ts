/** Sites that the tests share; every one invented. */
import { parseSite, type Site, type SiteInput } from '../../model/index.ts';

type Deep<T> = T extends readonly unknown[] ? T : T extends object ? { [K in keyof T]?: Deep<T[K]> } : T;

const PLAIN: SiteInput = {
  title: 'Plain test site',
  place: { latitudeDeg: 33, longitudeDeg: -112, altitudeM: 300, timeZone: 'America/Phoenix' },
  climate: { sample: 'dry-basin' },
  ground: { albedo: 0.2 },
  box: { widthM: 0.3, heightM: 0.35, depthM: 0.12, solarAbsorptance: 0.4, emittance: 0.9, powerW: 15, massKg: 3 },
  limits: { minC: -40, maxC: 65 },
  walls: [{ name: 'wall', azimuthDeg: 270 }],
};

/** The plain site with parts replaced; lists and the climate are replaced whole. */
export function siteWith(changes: Deep<SiteInput> = {}): Site {
  const { place, ground, box, limits, constraints, ...rest } = changes as Partial<SiteInput>;
  return parseSite({
    ...PLAIN,
    ...rest,
    place: { ...PLAIN.place, ...place },
    ground: { ...PLAIN.ground, ...ground },
    box: { ...PLAIN.box, ...box },
    limits: { ...PLAIN.limits, ...limits },
    constraints: { ...constraints },
  });
}

/** One wall named "wall" that faces a bearing. */
export const wallFacing = (azimuthDeg: number, more: object = {}) => [{ name: 'wall', azimuthDeg, ...more }];
