/**
 * Every number a person can enter: its kind, the range that is accepted, and the default that stands in when it
 * is left out, with where that default comes from. The schema, the JSON Schema, the form, the error texts and the
 * list of assumptions all read this table.
 */
import { FINISHES } from './finishes.ts';
import { COMMON_PRACTICE, type NumberField } from './number-field.ts';
import { QUANTITY_KINDS } from './units.ts';
import { WALL_FIELDS } from './wall-fields.ts';

export type { NumberField } from './number-field.ts';

const invented = 'assumed where nothing is entered';

/** Keys are the paths of a site file; `walls[]` stands for each wall. */
export const FIELDS = {
  'place.latitudeDeg': { kind: 'angle', min: -90, max: 90, label: 'latitude, north positive' },
  'place.longitudeDeg': { kind: 'angle', min: -180, max: 180, label: 'longitude, east positive' },
  'place.altitudeM': {
    kind: 'length',
    min: -430,
    max: 6000,
    label: 'altitude above sea level',
    default: { value: 0, origin: 'sea level where nothing is entered' },
  },
  'climate.windFromDeg': { kind: 'bearing', min: -360, max: 360, label: 'direction that the wind comes from' },
  'climate.windMs': {
    kind: 'speed',
    min: 0,
    max: 40,
    label: 'free wind during the standard cycle, at the height of the box',
    default: { value: 0, origin: 'calm, on the safe side' },
  },
  'climate.coldNight.minC': { kind: 'temperature', min: -80, max: 40, label: 'outside air in the coldest night' },
  'climate.coldNight.dewPointC': { kind: 'temperature', min: -80, max: 35, label: 'dew point of that night' },
  'climate.coldNight.windMs': {
    kind: 'speed',
    min: 0,
    max: 40,
    label: 'free wind in that night',
    default: { value: 1, origin: 'nearly calm: the skins radiate below the air' },
  },
  'climate.coldNight.cloudFraction': {
    kind: 'ratio',
    min: 0,
    max: 1,
    label: 'cloud cover of that night, 0 clear to 1 overcast',
    default: { value: 0, origin: 'clear, on the safe side' },
  },
  'climate.designDay.maxC': {
    kind: 'temperature',
    min: -70,
    max: 60,
    label: 'highest outside air temperature of the day',
  },
  'climate.designDay.dailyRangeK': {
    kind: 'temperatureDifference',
    min: 0,
    max: 35,
    label: 'daily range of the air temperature',
    default: { value: 12, origin: invented },
  },
  'climate.designDay.dewPointC': {
    kind: 'temperature',
    min: -60,
    max: 35,
    label: 'dew point',
    default: { value: 10, origin: invented },
  },
  'climate.designDay.windMs': {
    kind: 'speed',
    min: 0,
    max: 40,
    label: 'free wind at the height of the box',
    default: { value: 1, origin: 'nearly calm, on the safe side' },
  },
  'climate.designDay.linkeTurbidity': {
    kind: 'ratio',
    min: 1,
    max: 10,
    label: 'Linke turbidity of the clear sky',
    default: { value: 3.5, origin: 'between a mid-latitude plain (3) and a large city (4)' },
  },
  'ground.albedo': {
    kind: 'ratio',
    min: 0,
    max: 1,
    label: 'ground albedo',
    default: { value: 0.2, origin: 'grass; usual value where the ground is unknown' },
  },
  'building.outlineM.eastM': { kind: 'length', min: -1000, max: 1000, label: 'corner of the building, metres east' },
  'building.outlineM.northM': { kind: 'length', min: -1000, max: 1000, label: 'corner of the building, metres north' },
  'building.heightM': {
    kind: 'length',
    min: 0.5,
    max: 300,
    label: 'height of the building',
    default: { value: 3, origin: 'one storey' },
  },
  'box.widthM': { kind: 'smallLength', min: 0.02, max: 3, label: 'box width' },
  'box.heightM': { kind: 'smallLength', min: 0.02, max: 3, label: 'box height' },
  'box.depthM': { kind: 'smallLength', min: 0.01, max: 2, label: 'box depth' },
  'box.solarAbsorptance': {
    kind: 'ratio',
    min: 0,
    max: 1,
    label: 'solar absorptance of the finish',
    default: { value: 0.5, origin: 'light grey, textbook range 0.40 to 0.60, value from memory' },
  },
  'box.emittance': {
    kind: 'ratio',
    min: 0,
    max: 1,
    label: 'long-wave emittance of the finish',
    default: { value: 0.9, origin: 'paint or plastic of any colour, 0.85 to 0.95' },
  },
  'box.powerW': { kind: 'power', min: 0, max: 2000, label: 'heat given off inside' },
  'box.massKg': {
    kind: 'mass',
    min: 0.05,
    max: 500,
    label: 'mass of box and contents, without a battery',
    default: { value: 3, origin: invented },
  },
  'box.mountHeightM': {
    kind: 'length',
    min: 0.05,
    max: 30,
    label: 'height of the middle of the box above ground',
    default: { value: 1.4, origin: `${COMMON_PRACTICE}: working height` },
  },
  'box.standOffM': {
    kind: 'smallLength',
    min: 0,
    max: 1,
    label: 'gap between box and wall',
    default: { value: 0.01, origin: `${COMMON_PRACTICE}: moulded feet of the box` },
  },
  'box.vents.lowAreaM2': { kind: 'smallArea', min: 0, max: 1, label: 'free area of the low openings' },
  'box.vents.highAreaM2': { kind: 'smallArea', min: 0, max: 1, label: 'free area of the high openings' },
  'box.vents.heightM': { kind: 'smallLength', min: 0, max: 3, label: 'height between low and high openings' },
  'box.vents.dischargeCoefficient': {
    kind: 'ratio',
    min: 0,
    max: 1,
    label: 'discharge coefficient of the openings',
    default: { value: 0.6, origin: 'sharp-edged openings, value from memory; less behind a filter or mesh' },
  },
  'box.battery.massKg': { kind: 'mass', min: 0.05, max: 500, label: 'mass of the battery' },
  'box.battery.powerW': {
    kind: 'power',
    min: 0,
    max: 500,
    label: 'heat given off by the battery itself',
    default: { value: 0, origin: 'kept charged; while it takes charge it gives off heat' },
  },
  'box.compartments.lowerShare': {
    kind: 'ratio',
    min: 0.05,
    max: 0.95,
    label: 'share of the height below the sheet between the rooms',
    default: { value: 0.4, origin: invented },
  },
  'box.compartments.lowerPowerW': {
    kind: 'power',
    min: 0,
    max: 2000,
    label: 'heat given off in the lower room, of the whole',
    default: { value: 0, origin: 'all electronics in the upper room' },
  },
  'box.postDistanceM': {
    kind: 'length',
    min: 0,
    max: 200,
    label: 'from the wall to the back of a box on a post',
    default: { value: 2, origin: invented },
  },
  'box.hood.gapM': {
    kind: 'smallLength',
    min: 0.003,
    max: 0.5,
    label: 'gap between hood and box',
    default: { value: 0.03, origin: COMMON_PRACTICE },
  },
  'box.hood.solarAbsorptance': {
    kind: 'ratio',
    min: 0,
    max: 1,
    label: 'solar absorptance of the hood',
    default: { value: FINISHES.whitePaint.weathered.solarAbsorptance, origin: 'white, weathered: value from memory' },
  },
  'box.hood.emittance': {
    kind: 'ratio',
    min: 0,
    max: 1,
    label: 'long-wave emittance of the hood',
    default: { value: 0.9, origin: 'paint of any colour, 0.85 to 0.95' },
  },
  'limits.minC': {
    kind: 'temperature',
    min: -80,
    max: 60,
    label: 'lowest permitted temperature',
    default: { value: -40, origin: `${COMMON_PRACTICE}: outdoor electronics` },
  },
  'limits.maxC': {
    kind: 'temperature',
    min: -20,
    max: 150,
    label: 'highest permitted temperature',
    default: { value: 65, origin: `${COMMON_PRACTICE}: air inside an outdoor enclosure` },
  },
  ...WALL_FIELDS,
} as const satisfies Record<string, NumberField>;

export type FieldPath = keyof typeof FIELDS;

/** A path with list positions taken out: "walls.2.azimuthDeg" is "walls[].azimuthDeg". */
export function generalPath(path: string): string {
  return path
    .replace(/^building\.outlineM\.\d+\.0$/, 'building.outlineM.eastM')
    .replace(/^building\.outlineM\.\d+\.1$/, 'building.outlineM.northM')
    .replace(/\.horizon\.\d+\.0$/, '.horizon.bearingDeg')
    .replace(/\.horizon\.\d+\.1$/, '.horizon.elevationDeg')
    .replace(/^constraints\.mountHeightM\.\d$/, 'constraints.mountHeightM')
    .replace(/\.\d+(?=\.|$)/g, '[]');
}

/** The number field at a path in a site file; undefined where no number is entered. */
export function fieldAt(path: string): NumberField | undefined {
  return FIELDS[generalPath(path) as FieldPath];
}

/** What a field accepts, for messages: "-90 to 90 deg, such as 8 or "8 deg"". */
export function allowedText(field: NumberField): string {
  const { si, example } = QUANTITY_KINDS[field.kind];
  return `${field.min} to ${field.max}${si === '' ? '' : ` ${si}`}, such as ${example}`;
}
