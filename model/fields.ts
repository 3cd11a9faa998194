/**
 * Every number a person can enter: its kind, the range that is accepted, and the default that stands in when it
 * is left out, with where that default comes from. The schema, the JSON Schema, the form, the error texts and the
 * list of assumptions all read this table.
 */
import { QUANTITY_KINDS, type QuantityKind } from './units.ts';

export interface FieldDefault {
  readonly value: number;
  /** Where the value comes from; shown to the user beside the value. */
  readonly origin: string;
}

export interface NumberField {
  readonly kind: QuantityKind;
  readonly min: number;
  readonly max: number;
  readonly label: string;
  readonly default?: FieldDefault;
}

const common = 'common practice, no source';
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
    default: { value: 1.4, origin: `${common}: working height` },
  },
  'box.standOffM': {
    kind: 'smallLength',
    min: 0,
    max: 1,
    label: 'gap between box and wall',
    default: { value: 0.01, origin: `${common}: moulded feet of the box` },
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
    default: { value: 0.03, origin: common },
  },
  'box.hood.solarAbsorptance': {
    kind: 'ratio',
    min: 0,
    max: 1,
    label: 'solar absorptance of the hood',
    default: { value: 0.3, origin: 'white, weathered; new white paint 0.12 to 0.26' },
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
    default: { value: -40, origin: `${common}: outdoor electronics` },
  },
  'limits.maxC': {
    kind: 'temperature',
    min: -20,
    max: 150,
    label: 'highest permitted temperature',
    default: { value: 65, origin: `${common}: air inside an outdoor enclosure` },
  },
  'walls[].azimuthDeg': { kind: 'bearing', min: -360, max: 360, label: 'bearing the wall faces, from true north' },
  'walls[].solarAbsorptance': { kind: 'ratio', min: 0, max: 1, label: 'solar absorptance of the wall' },
  'walls[].emittance': {
    kind: 'ratio',
    min: 0,
    max: 1,
    label: 'long-wave emittance of the wall',
    default: { value: 0.9, origin: 'masonry, paint, timber: 0.85 to 0.95' },
  },
  'walls[].windShelter': {
    kind: 'ratio',
    min: 0,
    max: 1,
    label: 'share of the free wind that reaches this wall',
  },
  'walls[].groundAlbedo': { kind: 'ratio', min: 0, max: 1, label: 'ground albedo before this wall' },
  'walls[].heightM': {
    kind: 'length',
    min: 0.5,
    max: 300,
    label: 'height of the wall',
    default: { value: 3, origin: 'one storey' },
  },
  'walls[].eave.depthM': { kind: 'length', min: 0, max: 10, label: 'how far the eave stands out from the wall' },
  'walls[].eave.heightAboveBoxM': {
    kind: 'length',
    min: 0,
    max: 30,
    label: 'height of the eave above the top of the box',
  },
  'walls[].eave.widthM': {
    kind: 'length',
    min: 0.05,
    max: 200,
    label: 'length of the eave along the wall',
    default: { value: 8, origin: 'runs on to both sides of the box' },
  },
  'walls[].eave.offsetM': {
    kind: 'length',
    min: -100,
    max: 100,
    label: 'middle of the eave to the right of the box, seen from outside',
    default: { value: 0, origin: 'centred above the box' },
  },
  'walls[].eave.transmittance': {
    kind: 'ratio',
    min: 0,
    max: 1,
    label: 'share of light that gets through the eave',
    default: { value: 0, origin: 'solid' },
  },
  'walls[].alongM': {
    kind: 'length',
    min: 0,
    max: 2000,
    label: "middle of the box from the left end of this edge of the building's outline, seen from outside",
  },
  'walls[].obstructions[].distanceM': { kind: 'length', min: 0.05, max: 500, label: 'distance' },
  'walls[].obstructions[].depthM': { kind: 'length', min: 0.05, max: 200, label: 'depth, out from the wall' },
  'walls[].obstructions[].heightM': { kind: 'length', min: 0.1, max: 300, label: 'height above ground' },
  'walls[].obstructions[].widthM': {
    kind: 'length',
    min: 0.05,
    max: 500,
    label: 'width along the wall',
    default: { value: 20, origin: 'runs on to both sides' },
  },
  'walls[].obstructions[].offsetM': {
    kind: 'length',
    min: -300,
    max: 300,
    label: 'middle to the right of the box, seen from outside',
    default: { value: 0, origin: 'straight before the box' },
  },
  'walls[].obstructions[].rightM': { kind: 'length', min: -300, max: 300, label: 'middle to the right of the box' },
  'walls[].obstructions[].outM': { kind: 'length', min: 0, max: 500, label: 'distance out from the wall' },
  'walls[].obstructions[].transmittance': {
    kind: 'ratio',
    min: 0,
    max: 1,
    label: 'share of light that gets through',
    default: { value: 0, origin: 'solid' },
  },
  'walls[].obstructions[].crownDiameterM': { kind: 'length', min: 0.2, max: 60, label: 'diameter of the crown' },
  'walls[].obstructions[].crownBaseM': {
    kind: 'length',
    min: 0,
    max: 60,
    label: 'height at which the crown begins',
    default: { value: 1.8, origin: common },
  },
  'walls[].obstructions[].trunkDiameterM': {
    kind: 'length',
    min: 0.02,
    max: 5,
    label: 'diameter of the trunk',
    default: { value: 0.25, origin: common },
  },
  'walls[].obstructions[].leafOnTransmittance': {
    kind: 'ratio',
    min: 0,
    max: 1,
    label: 'light through the crown in leaf',
    default: { value: 0.15, origin: 'broad-leaved trees 0.05 to 0.25, value from memory' },
  },
  'walls[].obstructions[].leafOffTransmittance': {
    kind: 'ratio',
    min: 0,
    max: 1,
    label: 'light through the bare crown',
    default: { value: 0.6, origin: 'bare broad-leaved trees 0.5 to 0.75, value from memory' },
  },
  'walls[].horizon.bearingDeg': { kind: 'bearing', min: -360, max: 360, label: 'bearing of a point of the horizon' },
  'walls[].horizon.elevationDeg': { kind: 'angle', min: 0, max: 90, label: 'elevation of the horizon' },
  'walls[].electrodeDistanceM': { kind: 'length', min: 0, max: 1000, label: 'conductor run to the earth electrode' },
  'walls[].cableDistanceM': { kind: 'length', min: 0, max: 10000, label: 'run to the incoming cable' },
  'constraints.maxElectrodeDistanceM': {
    kind: 'length',
    min: 0,
    max: 1000,
    label: 'longest permitted run to the earth electrode',
    default: { value: 15.24, origin: `${common}: 50 ft; local code decides` },
  },
  'constraints.maxCableDistanceM': { kind: 'length', min: 0, max: 10000, label: 'reach of the incoming cable' },
  'constraints.mountHeightM': { kind: 'length', min: 0, max: 30, label: 'working height, lowest and highest' },
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
