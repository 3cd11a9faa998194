/** Emissivity of the clear sky after several authors, to lay beside ours. Vapour pressure in hPa, temperatures in K. */

export interface SkyAir {
  readonly airC: number;
  readonly dewPointC: number;
  readonly pressureHPa: number;
}

interface PublishedSky {
  readonly name: string;
  /** Root mean square error on the stations of Li et al. 2017, W/m2, where reported (5.7). */
  readonly rmseWm2?: number;
  emissivity(air: SkyAir): number;
}

/** Over water: Magnus' formula, 12.27 hPa at 10 degC. */
const vapourHPa = (dewPointC: number): number => 6.112 * Math.exp((17.62 * dewPointC) / (243.12 + dewPointC));

export const PUBLISHED_SKIES: readonly PublishedSky[] = [
  {
    name: 'Clark and Allen (5.1)',
    emissivity: ({ dewPointC }) => 0.787 + 0.764 * Math.log((dewPointC + 273) / 273),
  },
  {
    name: 'Berdahl and Martin 1984 (5.2)',
    rmseWm2: 22.4,
    emissivity: ({ dewPointC, pressureHPa }) =>
      0.711 + 0.56 * (dewPointC / 100) + 0.73 * (dewPointC / 100) ** 2 + 0.00012 * (pressureHPa - 1013.25),
  },
  {
    name: 'Brunt 1932 (5.3)',
    rmseWm2: 32.2,
    emissivity: ({ dewPointC }) => 0.52 + 0.065 * Math.sqrt(vapourHPa(dewPointC)),
  },
  {
    name: 'Idso 1981 (5.4)',
    rmseWm2: 14,
    emissivity: ({ airC, dewPointC }) => 0.7 + 5.95e-5 * vapourHPa(dewPointC) * Math.exp(1500 / (airC + 273.15)),
  },
  {
    name: 'Brutsaert 1975 (5.5)',
    emissivity: ({ airC, dewPointC }) => 1.24 * (vapourHPa(dewPointC) / (airC + 273.15)) ** (1 / 7),
  },
  { name: 'Swinbank 1963 (5.6)', emissivity: ({ airC }) => 9.2e-6 * (airC + 273.15) ** 2 },
  {
    name: 'Brunt, Li et al. 2017 (5.7)',
    emissivity: ({ dewPointC }) => 0.618 + 0.056 * Math.sqrt(vapourHPa(dewPointC)),
  },
  {
    name: 'Idso, Li et al. 2017 (5.7)',
    emissivity: ({ airC, dewPointC }) => 0.685 + 3.2e-5 * vapourHPa(dewPointC) * Math.exp(1699 / (airC + 273.15)),
  },
];

/** What the list of check values prints for these formulas: air of 20 degC unless said, so that a slip of the pen shows. */
export const PUBLISHED_SKY_VALUES: readonly (readonly [
  name: string,
  air: Omit<SkyAir, 'pressureHPa'>,
  value: number,
])[] = [
  ['Clark and Allen (5.1)', { airC: 20, dewPointC: 10 }, 0.815],
  ['Berdahl and Martin 1984 (5.2)', { airC: 20, dewPointC: 10 }, 0.7743],
  ['Berdahl and Martin 1984 (5.2)', { airC: 20, dewPointC: -10 }, 0.6623],
  ['Berdahl and Martin 1984 (5.2)', { airC: 20, dewPointC: 0 }, 0.711],
  ['Berdahl and Martin 1984 (5.2)', { airC: 20, dewPointC: 20 }, 0.8522],
  ['Brunt 1932 (5.3)', { airC: 20, dewPointC: 10 }, 0.7476],
  ['Idso 1981 (5.4)', { airC: 20, dewPointC: 10 }, 0.822],
  ['Brutsaert 1975 (5.5)', { airC: 25, dewPointC: 10 }, 0.786],
  ['Swinbank 1963 (5.6)', { airC: 20, dewPointC: 10 }, 0.791],
];
