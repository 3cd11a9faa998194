/** The site of lessons that say nothing else: four plain walls to the four winds. No such place exists. */
import type { SiteInput } from '../site.ts';

export const LESSON_SITE: SiteInput = {
  title: 'Four plain walls (invented)',
  place: { latitudeDeg: 33, longitudeDeg: -112.5, altitudeM: 330, timeZone: 'America/Phoenix' },
  climate: { sample: 'dry-basin' },
  ground: { albedo: 0.25 },
  box: {
    widthM: 0.28,
    heightM: 0.34,
    depthM: 0.12,
    finish: 'lightGreyPaint',
    powerW: 14,
    massKg: 3.2,
    mountHeightM: 1.4,
    standOffM: 0.01,
  },
  limits: { minC: -40, maxC: 65, refersTo: 'insideAir' },
  walls: [
    { name: 'north', azimuthDeg: 0, construction: 'stucco' },
    { name: 'east', azimuthDeg: 90, construction: 'stucco' },
    { name: 'south', azimuthDeg: 180, construction: 'stucco' },
    { name: 'west', azimuthDeg: 270, construction: 'stucco' },
  ],
};
