/**
 * All convection of a network at once: the conductances of its links, worked out in one loop over plain numbers.
 *
 * The numbers say what the links' coefficients say (see `convection-law.ts`); the powers of the lengths are worked out
 * once, those of the air stand in the film table, and what is left for each link is a root of its temperature difference.
 */
import type { Coefficient } from './convection-law.ts';
import { FILM_COLUMNS, FILM_WIDTH, TABLE_FROM_K, TABLE_STEP_K, TABLE_TO_K } from './film-air.ts';
import { CRITICAL_REYNOLDS } from './forced-convection.ts';
import { channelNu } from './gap.ts';
import {
  irregularSolidNu,
  stablePlateNu,
  unstablePlateLaminarNu,
  unstablePlateTurbulentNu,
} from './natural-convection.ts';

/** A convection link by the places of its ends in the temperature array. */
export interface BankedLink {
  readonly i: number;
  readonly j: number;
  readonly areaM2: number;
  readonly coefficient: Coefficient;
}

export interface ConvectionBank {
  readonly count: number;
  /** Places of the surface and of its air in the temperature array. */
  readonly surface: Int32Array;
  readonly air: Int32Array;
  /** Conductances of the links from `from` on, W/K. Writes `into`. */
  conductancesWK(temperaturesK: Float64Array, windMs: number, into: Float64Array): void;
}

const FUNCTION = 0;
const UPRIGHT = 1;
const STILL_UPRIGHT = 2;
const IRREGULAR = 3;
const FACING_UP = 4;
const FACING_DOWN = 5;
const CHANNEL = 6;
const ACROSS = 7;

const SHAPE_NUMBERS = {
  upright: UPRIGHT,
  stillUpright: STILL_UPRIGHT,
  irregular: IRREGULAR,
  facingUp: FACING_UP,
  facingDown: FACING_DOWN,
  channel: CHANNEL,
  across: ACROSS,
} as const;

/** Level plates below this Rayleigh number are laminar for sure; the turbulent form takes over at 4.7e6. */
const SURELY_LAMINAR = 4e6;

/** Makes the bank of some links. All of their laws must belong to the same film air. @throws RangeError otherwise */
export function convectionBank(links: readonly BankedLink[]): ConvectionBank {
  const count = links.length;
  const surface = Int32Array.from(links, ({ i }) => i);
  const air = Int32Array.from(links, ({ j }) => j);
  const areaM2 = Float64Array.from(links, (link) => link.areaM2);
  const shape = Int32Array.from(links, ({ coefficient: { law } }) => (law ? SHAPE_NUMBERS[law.shape] : FUNCTION));
  const functions = links.map(({ coefficient }) => coefficient);
  const films = new Set(links.flatMap(({ coefficient: { law } }) => (law ? [law.film] : [])));
  if (films.size > 1) throw new RangeError('convection: the laws of a network must share their air');
  const columns = [...films][0]?.columns ?? new Float64Array(FILM_WIDTH);

  // What the lengths and areas make of each shape, see the loop.
  const factors = links.map(factorsOf);
  const base = Float64Array.from(factors, ([first]) => first);
  const growth = Float64Array.from(factors, ([, second]) => second);
  const cubeRootGrowth = Float64Array.from(factors, ([, , third]) => third);
  const lengthCubed = Float64Array.from(links, ({ coefficient: { law } }) =>
    law && 'lengthM' in law ? law.lengthM ** 3 : 0,
  );
  const plates = links.map(({ coefficient: { law } }) => (law && 'along' in law ? law.along : undefined));
  /** Forced conductance of a laminar plate at sqrt(1 m/s), against the film column. */
  const along = Float64Array.from(links, (link, k) => {
    const plate = plates[k];
    return plate ? link.areaM2 * Math.sqrt(plate.shelter / plate.lengthM) : 0;
  });
  /** Reynolds number of a plate at 1 m/s, times the viscosity. */
  const reynolds = Float64Array.from(plates, (plate) => (plate ? plate.shelter * plate.lengthM : 0));
  const rough = Float64Array.from(links, ({ areaM2: m2, coefficient: { law } }) =>
    law && 'roughAt1Ms' in law ? m2 * (law.roughAt1Ms ?? 0) : 0,
  );

  return {
    count,
    surface,
    air,
    conductancesWK(t, windMs, into) {
      const rootWind = Math.sqrt(Math.max(0, windMs));
      for (let k = 0; k < count; k++) {
        const surfaceK = t[surface[k] as number] as number;
        const airK = t[air[k] as number] as number;
        const kind = shape[k] as number;
        if (kind === FUNCTION) {
          into[k] = (areaM2[k] as number) * (functions[k] as Coefficient)(surfaceK, airK, windMs);
          continue;
        }
        const filmK = Math.max(TABLE_FROM_K, Math.min(TABLE_TO_K, (surfaceK + airK) / 2));
        const position = (filmK - TABLE_FROM_K) / TABLE_STEP_K;
        const row = Math.floor(position);
        const f = position - row;
        const at = row * FILM_WIDTH;
        const difference = Math.abs(surfaceK - airK);
        let conductance = 0;
        if (kind === UPRIGHT) {
          const sixthRoot = Math.cbrt(Math.sqrt(difference));
          const root =
            (base[k] as number) * read(columns, at + FILM_COLUMNS.uprightBase, f) +
            (growth[k] as number) * read(columns, at + FILM_COLUMNS.uprightGrowth, f) * sixthRoot;
          conductance = root * root;
        } else if (kind === STILL_UPRIGHT) {
          conductance =
            (base[k] as number) * read(columns, at + FILM_COLUMNS.stillBase, f) +
            (growth[k] as number) * read(columns, at + FILM_COLUMNS.stillGrowth, f) * Math.sqrt(Math.sqrt(difference));
        } else if (kind === ACROSS) {
          conductance = (base[k] as number) * read(columns, at + FILM_COLUMNS.conductivity, f);
        } else if (kind === CHANNEL) {
          const x = (growth[k] as number) * read(columns, at + FILM_COLUMNS.buoyancy, f) * difference;
          conductance = (base[k] as number) * channelNu(x) * read(columns, at + FILM_COLUMNS.conductivity, f);
        } else {
          const laminar = read(columns, at + FILM_COLUMNS.fourthRoot, f) * Math.sqrt(Math.sqrt(difference));
          const unstable = kind === FACING_UP ? surfaceK > airK : surfaceK <= airK;
          if (kind === IRREGULAR || !unstable) conductance = (base[k] as number) * laminar;
          else {
            conductance = (growth[k] as number) * laminar;
            const ra = read(columns, at + FILM_COLUMNS.buoyancy, f) * difference * (lengthCubed[k] as number);
            if (ra > SURELY_LAMINAR) {
              const cubeRoot = read(columns, at + FILM_COLUMNS.cubeRoot, f) * Math.cbrt(difference);
              conductance = Math.max(conductance, (cubeRootGrowth[k] as number) * cubeRoot);
            }
          }
        }
        if (windMs > 0 && (along[k] as number) > 0) {
          const laminarBelow = CRITICAL_REYNOLDS * read(columns, at + FILM_COLUMNS.viscosity, f);
          if ((reynolds[k] as number) * windMs > laminarBelow) {
            // A large plate in a strong wind turns turbulent; rare enough for its function.
            conductance = (areaM2[k] as number) * (functions[k] as Coefficient)(surfaceK, airK, windMs);
          } else {
            const forced = (along[k] as number) * rootWind * read(columns, at + FILM_COLUMNS.alongPlate, f);
            conductance = Math.cbrt(conductance * conductance * conductance + forced * forced * forced);
          }
        }
        into[k] = conductance + (rough[k] as number) * rootWind;
      }
    },
  };
}

/** A film column between two rows of the table. */
function read(columns: Float64Array, at: number, f: number): number {
  const low = columns[at] as number;
  return low + f * ((columns[at + FILM_WIDTH] as number) - low);
}

/**
 * What area and length make of a shape. Upright: conductance = (first sqrt(k Nu0) + second growth dT^(1/6))^2; in still
 * air first k Nu0 + second growth dT^(1/4); irregular and level: first times the stable form, second the unstable laminar
 * one, third the turbulent one; channels: first k Nu(second B dT).
 */
function factorsOf({ areaM2, coefficient: { law } }: BankedLink): [number, number, number] {
  if (law === undefined) return [0, 0, 0];
  if (law.shape === 'across') return [areaM2 / law.gapM, 0, 0];
  if (law.shape === 'channel') return [areaM2 / law.gapM, law.gapM ** 4 / law.heightM, 0];
  const { shape, lengthM } = law;
  const fourthRoot = areaM2 / Math.sqrt(Math.sqrt(lengthM));
  if (shape === 'upright') return [Math.sqrt(areaM2 / lengthM), Math.sqrt(areaM2), 0];
  if (shape === 'stillUpright') return [areaM2 / lengthM, fourthRoot, 0];
  if (shape === 'irregular') return [fourthRoot * irregularSolidNu(1), 0, 0];
  return [fourthRoot * stablePlateNu(1), fourthRoot * unstablePlateLaminarNu(1), areaM2 * unstablePlateTurbulentNu(1)];
}
