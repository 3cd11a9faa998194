/**
 * Wall constructions: the outer layer that the sun and the box heat, and what lies between it and indoors.
 * Conductivity, density and specific heat are typical design values of ISO 10456:2007 (value from memory);
 * resistances behind the outer layer are common practice, no source; solar absorptances are mid-range figures of
 * engineering tables (red brick 0.70 to 0.75, discoloured concrete 0.65; render, timber and sheet from memory). Roughness by the classes of Walton 1983 (EnergyPlus
 * Engineering Reference: stucco 2.17, brick 1.67, concrete 1.52, pine 1.13, smooth plaster 1.11, glass 1.00).
 */
export interface Construction {
  readonly label: string;
  readonly conductivityWmK: number;
  readonly densityKgM3: number;
  readonly specificHeatJkgK: number;
  /** Thickness of the outer layer, m. */
  readonly outerLayerM: number;
  /** Resistance from the inner side of the outer layer to indoor air, m2K/W, surface resistance included. */
  readonly innerResistanceM2KW: number;
  readonly solarAbsorptance: number;
  /** Roughness multiplier of its outside for wind, see `roughWallForced`. */
  readonly roughness: number;
}

export const CONSTRUCTIONS = {
  brick: {
    label: 'brick veneer on an insulated wall',
    conductivityWmK: 0.77,
    densityKgM3: 1700,
    specificHeatJkgK: 800,
    outerLayerM: 0.1,
    innerResistanceM2KW: 2,
    solarAbsorptance: 0.7,
    roughness: 1.67,
  },
  block: {
    label: 'concrete block, no insulation',
    conductivityWmK: 1.13,
    densityKgM3: 2000,
    specificHeatJkgK: 1000,
    outerLayerM: 0.19,
    innerResistanceM2KW: 0.15,
    solarAbsorptance: 0.65,
    roughness: 1.67,
  },
  concrete: {
    label: 'cast concrete, no insulation',
    conductivityWmK: 2,
    densityKgM3: 2400,
    specificHeatJkgK: 1000,
    outerLayerM: 0.15,
    innerResistanceM2KW: 0.15,
    solarAbsorptance: 0.65,
    roughness: 1.52,
  },
  timber: {
    label: 'timber siding on an insulated frame',
    conductivityWmK: 0.13,
    densityKgM3: 500,
    specificHeatJkgK: 1600,
    outerLayerM: 0.02,
    innerResistanceM2KW: 2.3,
    solarAbsorptance: 0.7,
    roughness: 1.13,
  },
  stucco: {
    label: 'stucco on an insulated frame',
    conductivityWmK: 1,
    densityKgM3: 1800,
    specificHeatJkgK: 1000,
    outerLayerM: 0.02,
    innerResistanceM2KW: 2.3,
    solarAbsorptance: 0.5,
    roughness: 2.17,
  },
  metal: {
    label: 'metal sheet on an uninsulated frame',
    conductivityWmK: 50,
    densityKgM3: 7800,
    specificHeatJkgK: 450,
    outerLayerM: 0.0007,
    innerResistanceM2KW: 0.15,
    solarAbsorptance: 0.7,
    roughness: 1.0,
  },
  insulatedRender: {
    label: 'thin render on outside insulation',
    conductivityWmK: 1,
    densityKgM3: 1800,
    specificHeatJkgK: 1000,
    outerLayerM: 0.008,
    innerResistanceM2KW: 3.5,
    solarAbsorptance: 0.5,
    roughness: 1.52,
  },
} as const satisfies Record<string, Construction>;

export type ConstructionName = keyof typeof CONSTRUCTIONS;

export const CONSTRUCTION_NAMES = Object.keys(CONSTRUCTIONS) as [ConstructionName, ...ConstructionName[]];
