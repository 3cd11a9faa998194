/**
 * The site file: zod schemas of everything a user can enter. Types, JSON Schema and error texts derive from them;
 * ranges and defaults of numbers stand in `fields.ts`, rules between
 * fields in `site-rules.ts`.
 */
import { z } from 'zod';
import { CLIMATE_SAMPLES, STANDARD_CYCLES } from './climate/samples.ts';
import { CONSTRUCTION_NAMES } from './constructions.ts';
import { DUTY_NAMES } from './duty.ts';
import { FACES, type Face, MOUNTS } from './faces.ts';
import { allowedText, FIELDS, type FieldPath, type NumberField } from './fields.ts';
import { FINISH_NAMES, FINISH_STATES } from './finishes.ts';
import { shown } from './site-error.ts';
import { QUANTITY_KINDS, type QuantityReader } from './units.ts';

/** What the outer skin is made of, as touch feels it. */
export const TOUCH_MATERIALS = ['metal', 'plastic'] as const;

export const LIMIT_REFERENCES = ['insideAir', 'outsideAir', 'componentCase'] as const;

/** The faces that a hood covers where none are entered. */
export const USUAL_HOOD_FACES: readonly Face[] = ['front', 'left', 'right', 'top'];

/** First and last month of leaf of a northern tree where none are entered. */
export const USUAL_LEAF_MONTHS: readonly [number, number] = [4, 10];

/** Low and high openings lie this share of the vented height apart where nothing is entered. */
export const USUAL_VENT_SPAN = 0.8;

/** Height of the room that vents open into: the upper one of two. */
export function ventedHeightM(box: { heightM: number; compartments: { lowerShare: number } | null }): number {
  return box.heightM * (1 - (box.compartments?.lowerShare ?? 0));
}

const MAX_WALLS = 72;
const MAX_HORIZON_POINTS = 360;
const MAX_OBSTRUCTIONS = 40;
const MAX_CORNERS = 40;
const MAX_TEXT = 200;

const OBSTRUCTION_KINDS = 'sideWall, front, block, tree';
const OBSTRUCTION = 'walls[].obstructions[]';

/** Names that an object of the schema knows, by its general path; used to point out typos. */
export type KnownKeys = Map<string, readonly string[]>;

/** Builds the schema of a site file; `read` turns typed text into SI numbers. */
export function buildSiteSchema(read: QuantityReader, knownKeys: KnownKeys = new Map()) {
  function object<Shape extends z.core.$ZodLooseShape>(path: string, shape: Shape) {
    // Variants of one object know the keys of all.
    knownKeys.set(path, [...new Set([...(knownKeys.get(path) ?? []), ...Object.keys(shape)])]);
    return z.strictObject(shape);
  }

  /** A number in SI, or text with a unit, within the range that `fields.ts` states. */
  function required(path: FieldPath) {
    const field: NumberField = FIELDS[path];
    return z
      .union([z.number(), z.string()])
      .meta({
        description: field.label,
        unit: QUANTITY_KINDS[field.kind].si,
        minimum: field.min,
        maximum: field.max,
        examples: [QUANTITY_KINDS[field.kind].example],
      })
      .transform((entered, context) => {
        const value = typeof entered === 'string' ? read(entered, field.kind) : entered;
        const wrong = value === null ? `${shown(entered)} is not understood` : outOfRange(value, field);
        if (value === null || wrong !== null) {
          context.issues.push({
            code: 'custom',
            input: entered,
            message: wrong ?? '',
            params: { allowed: allowedText(field) },
          });
          return z.NEVER;
        }
        return value;
      });
  }

  function defaulted(
    path: { [P in FieldPath]: (typeof FIELDS)[P] extends { default: unknown } ? P : never }[FieldPath],
  ) {
    return required(path).prefault(FIELDS[path].default.value);
  }

  const text = z.string().trim().max(MAX_TEXT);
  const isoDate = z.iso
    .date({
      error: (issue) => `${shown(issue.input)} is no date; allowed: 1900-01-01 to 2100-12-31, such as "2026-07-21"`,
    })
    .refine((date) => date >= '1900-01-01' && date <= '2100-12-31', {
      error: (issue) => `${shown(issue.input)} is outside 1900 to 2100`,
      abort: true,
    });

  const month = z
    .int({ error: (issue) => `${shown(issue.input)} is no month; allowed: 1 to 12` })
    .min(1, { error: 'a month is at least 1; allowed: 1 to 12' })
    .max(12, { error: 'a month is at most 12; allowed: 1 to 12' });

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

  const eave = object('walls[].eave', {
    depthM: required('walls[].eave.depthM'),
    heightAboveBoxM: required('walls[].eave.heightAboveBoxM'),
    widthM: defaulted('walls[].eave.widthM'),
    offsetM: defaulted('walls[].eave.offsetM'),
    transmittance: defaulted('walls[].eave.transmittance'),
  });

  const at = <Key extends string>(key: Key) => `${OBSTRUCTION}.${key}` as const;
  const obstruction = z.discriminatedUnion(
    'kind',
    [
      object(OBSTRUCTION, {
        kind: z.literal('sideWall'),
        side: z.enum(['left', 'right']),
        distanceM: required(at('distanceM')),
        depthM: required(at('depthM')),
        heightM: required(at('heightM')),
      }),
      object(OBSTRUCTION, {
        kind: z.literal('front'),
        distanceM: required(at('distanceM')),
        heightM: required(at('heightM')),
        widthM: defaulted(at('widthM')),
        offsetM: defaulted(at('offsetM')),
        transmittance: defaulted(at('transmittance')),
      }),
      object(OBSTRUCTION, {
        kind: z.literal('block'),
        rightM: required(at('rightM')),
        outM: required(at('outM')),
        widthM: required(at('widthM')),
        depthM: required(at('depthM')),
        heightM: required(at('heightM')),
      }),
      object(OBSTRUCTION, {
        kind: z.literal('tree'),
        rightM: required(at('rightM')),
        outM: required(at('outM')),
        heightM: required(at('heightM')),
        crownDiameterM: required(at('crownDiameterM')),
        crownBaseM: defaulted(at('crownBaseM')),
        trunkDiameterM: defaulted(at('trunkDiameterM')),
        leafOnTransmittance: defaulted(at('leafOnTransmittance')),
        leafOffTransmittance: defaulted(at('leafOffTransmittance')),
        leafOnMonths: z.tuple([month, month]).default([...USUAL_LEAF_MONTHS]),
      }),
    ],
    {
      error: (issue) =>
        `${shown((issue.input as { kind?: unknown } | null)?.kind)} is no kind; allowed: ${OBSTRUCTION_KINDS}`,
    },
  );

  const wall = object('walls[]', {
    name: text.min(1, { error: 'the name is empty' }),
    azimuthDeg: required('walls[].azimuthDeg'),
    construction: z.enum(CONSTRUCTION_NAMES).default('brick'),
    solarAbsorptance: required('walls[].solarAbsorptance').optional(),
    emittance: defaulted('walls[].emittance'),
    heightM: defaulted('walls[].heightM'),
    windShelter: required('walls[].windShelter')
      .nullable()
      .default(null)
      .meta({ description: 'Share of the free wind at this wall; from the direction of the wind where left out' }),
    groundAlbedo: required('walls[].groundAlbedo')
      .nullable()
      .default(null)
      .meta({ description: "ground albedo before this wall; the site's where left out" }),
    edge: z
      .int({ error: (issue) => `${shown(issue.input)} is no edge; allowed: a whole number from 0` })
      .min(0, { error: 'edges are counted from 0; allowed: a whole number from 0' })
      .max(MAX_CORNERS - 1, { error: `no such edge; allowed: 0 to ${MAX_CORNERS - 1}` })
      .nullable()
      .default(null)
      .meta({
        description: "Edge of the building's outline that this wall is: number k runs from corner k to the next",
      }),
    alongM: required('walls[].alongM').nullable().default(null),
    eave: eave.nullable().default(null),
    obstructions: z.array(obstruction).max(MAX_OBSTRUCTIONS).default([]),
    horizon: z
      .array(z.tuple([required('walls[].horizon.bearingDeg'), required('walls[].horizon.elevationDeg')]))
      .max(MAX_HORIZON_POINTS)
      .default([]),
    electrodeDistanceM: required('walls[].electrodeDistanceM').nullable().default(null),
    cableDistanceM: required('walls[].cableDistanceM').nullable().default(null),
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
    walls: z.array(wall).min(1, { error: 'at least one wall is needed' }).max(MAX_WALLS),
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

function outOfRange(value: number, field: NumberField): string | null {
  if (!Number.isFinite(value)) return `${shown(value)} is not a number`;
  if (value < field.min) return `${shown(value)} is below ${field.min}`;
  if (value > field.max) return `${shown(value)} is above ${field.max}`;
  return null;
}

/** Whether the runtime's time-zone data knows this IANA name. */
export function isTimeZone(name: string): boolean {
  try {
    new Intl.DateTimeFormat('en', { timeZone: name });
    return true;
  } catch {
    return false;
  }
}
