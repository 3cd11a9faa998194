/**
 * The site that the program opens with: an invented homestead in the dry basin. The wall with the earth electrode
 * beside it is the hottest, the coolest one cannot be earthed within the permitted run, and the one with the deep eave
 * looks out on a yard of pale gravel that throws the sun in below it. No such place, building or person exists.
 */
import type { SiteInput } from './site.ts';

export const DEMO_SITE: SiteInput = {
  title: 'Homestead in the dry basin (invented)',
  place: { latitudeDeg: 33.2, longitudeDeg: -113.4, altitudeM: 330, timeZone: 'America/Phoenix' },
  climate: { sample: 'dry-basin' },
  ground: { albedo: 0.25 },
  // Fourteen by nine metres, its long sides turned eight degrees from east and west.
  building: {
    outlineM: [
      [7.56, 3.48],
      [6.31, -5.43],
      [-7.56, -3.48],
      [-6.31, 5.43],
    ],
    heightM: 3,
  },
  box: {
    widthM: 0.28,
    heightM: 0.34,
    depthM: 0.12,
    solarAbsorptance: 0.5,
    emittance: 0.9,
    powerW: 14,
    massKg: 3.2,
    mountHeightM: 1.4,
    standOffM: 0.01,
  },
  limits: { minC: -40, maxC: 65, refersTo: 'insideAir' },
  walls: [
    {
      name: 'north',
      azimuthDeg: 8,
      construction: 'stucco',
      electrodeDistanceM: 21,
      cableDistanceM: 17,
      clearances: { meterM: 10, gasVentM: 1.8, exhaustM: 2.5 },
    },
    {
      name: 'east',
      azimuthDeg: 98,
      construction: 'stucco',
      electrodeDistanceM: 14,
      cableDistanceM: 26,
      clearances: { meterM: 10, gasVentM: 6 },
    },
    {
      name: 'south',
      azimuthDeg: 188,
      construction: 'stucco',
      groundAlbedo: 0.45,
      eave: { depthM: 0.9, heightAboveBoxM: 0.9, widthM: 9 },
      electrodeDistanceM: 11,
      cableDistanceM: 19,
      clearances: { meterM: 10, gasVentM: 10, exhaustM: 4.5, sprinklerM: 2 },
    },
    {
      name: 'west',
      azimuthDeg: 278,
      construction: 'stucco',
      electrodeDistanceM: 1.5,
      cableDistanceM: 6,
      clearances: { meterM: 1.2, gasVentM: 10, exhaustM: 10 },
    },
  ],
  // Six gauge, and a driven rod of eight feet.
  earthing: { conductorMm2: 13.3, electrodeDepthM: 2.44 },
  constraints: { maxElectrodeDistanceM: 15.24, maxCableDistanceM: 30, mountHeightM: [1.2, 1.6] },
};
