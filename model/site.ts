/**
 * The site file: zod schemas of everything a user can enter. Types, JSON Schema and error texts derive from them;
 * ranges and defaults of numbers stand in `fields.ts`, walls in `wall-schema.ts`, rules between fields in `site-rules.ts`.
 */
import { z } from 'zod';
import { CLIMATE_SAMPLES, STANDARD_CYCLES } from './climate/samples.ts';
import { DUTY_NAMES } from './duty.ts';
import { FACES, type Face, MOUNTS } from './faces.ts';
import { FINISH_NAMES, FINISH_STATES } from './finishes.ts';
import { type KnownKeys, MAX_TEXT, schemaParts } from './schema-parts.ts';
import { shown } from './site-error.ts';
import type { QuantityReader } from './units.ts';
import { MAX_CORNERS, wallSchema } from './wall-schema.ts';

export type { KnownKeys } from './schema-parts.ts';
export { USUAL_LEAF_MONTHS } from './wall-schema.ts';

/** What the outer skin is made of, as touch feels it. */
export const TOUCH_MATERIALS = ['metal', 'plastic'] as const;

export const LIMIT_REFERENCES = ['insideAir', 'outsideAir', 'componentCase'] as const;

/** The faces that a hood covers where none are entered. */
export const USUAL_HOOD_FACES: readonly Face[] = ['front', 'left', 'right', 'top'];

/** Low and high openings lie this share of the vented height apart where nothing is entered. */
export const USUAL_VENT_SPAN = 0.8;

/** Height of the room that vents open into: the upper one of two. */
export function ventedHeightM(box: { heightM: number; compartments: { lowerShare: number } | null }): number {
  return box.heightM * (1 - (box.compartments?.lowerShare ?? 0));
}

const MAX_WALLS = 72;

/** Builds the schema of a site file; `read` turns typed text into SI numbers. */
export function buildSiteSchema(read: QuantityReader, knownKeys: KnownKeys = new Map()) {
  const parts = schemaParts(read, knownKeys);
  const { object, required, defaulted, text, month } = parts;

  const isoDate = z.iso
    .date({
      abort: true,
      error: (issue) => `${shown(issue.input)} is no date; allowed: 1900-01-01 to 2100-12-31, such as "2026-07-21"`,
    })
    .refine((date) => date >= '1900-01-01' && date <= '2100-12-31', {
      error: (issue) => `${shown(issue.input)} is outside 1900 to 2100`,
      abort: true,
    });

  const place = object('place', {
    latitudeDeg: required('place.latitudeDeg'),
    longitudeDeg: required('place.longitudeDeg'),
    altitudeM: defaulted('place.altitudeM'),
    timeZone: z
      .string()
      .refine(isTimeZone, { error: (issue) => `${shown(issue.input)} is no known time zone` })
      .optional()
      .meta({ description: 'IANA time zone; looked up from the coordinates where left out' }),
  });

  const designDay = object('climate.designDay', {
    date: isoDate,
    maxC: required('climate.designDay.maxC'),
    dailyRangeK: defaulted('climate.designDay.dailyRangeK'),
    dewPointC: defaulted('climate.designDay.dewPointC'),
    windMs: defaulted('climate.designDay.windMs'),
    linkeTurbidity: defaulted('climate.designDay.linkeTurbidity'),
  });

  const coldNight = object('climate.coldNight', {
    minC: required('climate.coldNight.minC'),
    dewPointC: required('climate.coldNight.dewPointC').optional(),
    windMs: defaulted('climate.coldNight.windMs'),
    cloudFraction: defaulted('climate.coldNight.cloudFraction'),
  });

  const climate = object('climate', {
    sample: z.enum(CLIMATE_SAMPLES.map((sample) => sample.name)).optional(),
    month: month.optional(),
    designDay: designDay.optional(),
    coldNight: coldNight.optional(),
    cycle: z.enum(STANDARD_CYCLES.map((cycle) => cycle.name)).optional(),
    date: isoDate.optional(),
    windMs: required('climate.windMs').optional(),
    windFromDeg: required('climate.windFromDeg').optional().meta({
      description: 'Direction that the wind comes from; walls that it meets have more of it. Unknown where left out',
    }),
  });

  const hood = object('box.hood', {
    faces: z
      .array(z.enum(FACES))
      .min(1, { error: 'a hood covers at least one face; allowed: front, left, right, top, bottom, back' })
      .max(FACES.length)
      .default([...USUAL_HOOD_FACES]),
    gapM: defaulted('box.hood.gapM'),
    solarAbsorptance: defaulted('box.hood.solarAbsorptance'),
    emittance: defaulted('box.hood.emittance'),
    openTop: z.boolean().default(true),
  });

  const vents = object('box.vents', {
    lowAreaM2: required('box.vents.lowAreaM2'),
    highAreaM2: required('box.vents.highAreaM2'),
    heightM: required('box.vents.heightM').optional(),
    dischargeCoefficient: defaulted('box.vents.dischargeCoefficient'),
  });

  const battery = object('box.battery', {
    massKg: required('box.battery.massKg'),
    powerW: defaulted('box.battery.powerW'),
  });

  const compartments = object('box.compartments', {
    lowerShare: defaulted('box.compartments.lowerShare'),
    lowerPowerW: defaulted('box.compartments.lowerPowerW'),
  });

  const box = object('box', {
    widthM: required('box.widthM'),
    heightM: required('box.heightM'),
    depthM: required('box.depthM'),
    finish: z
      .enum(FINISH_NAMES)
      .nullable()
      .default(null)
      .meta({ description: 'Finish whose absorptance and emittance stand in where none are entered' }),
    finishState: z.enum(FINISH_STATES).default('weathered'),
    material: z
      .enum(TOUCH_MATERIALS)
      .default('metal')
      .meta({ description: 'Of the outer skin, for the temperature at which it burns' }),
    solarAbsorptance: required('box.solarAbsorptance').optional(),
    emittance: required('box.emittance').optional(),
    powerW: required('box.powerW'),
    duty: z.enum(DUTY_NAMES).default('constant').meta({ description: 'How the heat inside follows the clock' }),
    massKg: defaulted('box.massKg'),
    mountHeightM: defaulted('box.mountHeightM'),
    mount: z.enum(MOUNTS).default('wall').meta({ description: 'on the wall, or on a post of its own before it' }),
    standOffM: defaulted('box.standOffM'),
    postDistanceM: defaulted('box.postDistanceM'),
    vents: vents.nullable().default(null),
    battery: battery.nullable().default(null),
    compartments: compartments.nullable().default(null),
    hood: hood.nullable().default(null),
  });

  const building = object('building', {
    outlineM: z
      .array(z.tuple([required('building.outlineM.eastM'), required('building.outlineM.northM')]))
      .min(3, { error: `a building has three corners at least; allowed: 3 to ${MAX_CORNERS} corners` })
      .max(MAX_CORNERS, { error: `more corners than fit; allowed: 3 to ${MAX_CORNERS} corners` })
      .meta({ description: 'Corners in order, [metres east, metres north] of any fixed place' }),
    heightM: defaulted('building.heightM'),
  });

  const limits = object('limits', {
    minC: defaulted('limits.minC'),
    maxC: defaulted('limits.maxC'),
    refersTo: z.enum(LIMIT_REFERENCES).default('insideAir'),
  });

  const earthing = object('earthing', {
    conductorMm2: required('earthing.conductorMm2').nullable().default(null),
    electrodeDepthM: required('earthing.electrodeDepthM').nullable().default(null),
  });

  const constraints = object('constraints', {
    maxElectrodeDistanceM: defaulted('constraints.maxElectrodeDistanceM').nullable(),
    maxCableDistanceM: required('constraints.maxCableDistanceM').nullable().default(null),
    mountHeightM: z
      .tuple([required('constraints.mountHeightM'), required('constraints.mountHeightM')])
      .nullable()
      .default([1.2, 1.6]),
  });

  return object('', {
    title: text.default('Untitled site'),
    place,
    climate,
    ground: object('ground', { albedo: defaulted('ground.albedo') }).prefault({}),
    building: building.nullable().default(null),
    box,
    limits: limits.prefault({}),
    walls: z.array(wallSchema(parts)).min(1, { error: 'at least one wall is needed' }).max(MAX_WALLS),
    earthing: earthing.prefault({}),
    constraints: constraints.prefault({}),
    assumed: z
      .array(z.string().max(MAX_TEXT))
      .max(1000)
      .default([])
      .meta({ description: 'Written by the program: the fields that it filled in' }),
  });
}

type Parsed = z.output<ReturnType<typeof buildSiteSchema>>;
type ParsedWall = Parsed['walls'][number];

/** A wall with everything filled in. */
export type Wall = Omit<ParsedWall, 'solarAbsorptance'> & { solarAbsorptance: number };

type ParsedBox = Parsed['box'];

/** A box with everything filled in. */
export type Box = Omit<ParsedBox, 'solarAbsorptance' | 'emittance' | 'vents'> & {
  solarAbsorptance: number;
  emittance: number;
  vents: (Omit<NonNullable<ParsedBox['vents']>, 'heightM'> & { heightM: number }) | null;
};

/** A site with everything filled in, numbers in SI. `assumed` lists the paths that were filled in by default. */
export type Site = Omit<Parsed, 'walls' | 'place' | 'box'> & {
  walls: Wall[];
  box: Box;
  place: Omit<Parsed['place'], 'timeZone'> & { timeZone: string };
};

/** What a user may hand in: numbers or text with units, defaults left out. */
export type SiteInput = z.input<ReturnType<typeof buildSiteSchema>>;

export type Obstruction = Wall['obstructions'][number];

/** Whether the runtime's time-zone data knows this IANA name. */
export function isTimeZone(name: string): boolean {
  try {
    new Intl.DateTimeFormat('en', { timeZone: name });
    return true;
  } catch {
    return false;
  }
}
