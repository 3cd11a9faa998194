/** The part of the site file that describes a wall and what stands before it. */
import { z } from 'zod';
import { CONSTRUCTION_NAMES } from './constructions.ts';
import type { SchemaParts } from './schema-parts.ts';
import { shown } from './site-error.ts';

/** First and last month of leaf of a northern tree where none are entered. */
export const USUAL_LEAF_MONTHS: readonly [number, number] = [4, 10];

/** Most corners, and so edges, that a building's outline has. */
export const MAX_CORNERS = 40;

const MAX_HORIZON_POINTS = 360;
const MAX_OBSTRUCTIONS = 40;

const OBSTRUCTION_KINDS = 'sideWall, front, block, tree';
const OBSTRUCTION = 'walls[].obstructions[]';

/** The schema of a wall. */
export function wallSchema({ object, required, defaulted, text, month }: SchemaParts) {
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

  const clearance = (key: 'meterM' | 'gasVentM' | 'exhaustM' | 'sprinklerM') =>
    required(`walls[].clearances.${key}`).nullable().default(null);
  const clearances = object('walls[].clearances', {
    meterM: clearance('meterM'),
    gasVentM: clearance('gasVentM'),
    exhaustM: clearance('exhaustM'),
    sprinklerM: clearance('sprinklerM'),
  });

  return object('walls[]', {
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
    clearances: clearances.prefault({}),
  });
}
