/**
 * How far the inputs of a forecast may be out, and how a site looks when they are. Every range is an assumption, common
 * practice, no source; within it each value is as likely as any other.
 */
import { resolvedClearDay } from '../climate/design-climate.ts';
import type { Box, Site } from '../site.ts';
import { formatQuantity, type UnitSystem } from '../units.ts';

/** A site with inputs moved, and the factor on the convection coefficients inside. */
export interface MovedSite {
  readonly site: Site;
  readonly insideFactor: number;
}

export interface InputSpread {
  readonly input: string;
  /** What is moved, and from where to where, in words. */
  text(units: UnitSystem): string;
  /** Whether the range is one of shifts, even by difference, or of factors, even by ratio. */
  readonly kind: 'shift' | 'factor';
  readonly low: number;
  readonly high: number;
  /** Whether there is anything to move: what is nothing stays nothing, and a standard cycle stands. */
  moves(site: Site): boolean;
  move(moved: MovedSite, by: number): MovedSite;
}

const share = (value: number): number => Math.min(1, Math.max(0, value));

const box =
  (changes: (box: Box, by: number) => Partial<Box>) =>
  (moved: MovedSite, by: number): MovedSite => ({
    ...moved,
    site: { ...moved.site, box: { ...moved.site.box, ...changes(moved.site.box, by) } },
  });

type ClearDay = NonNullable<ReturnType<typeof resolvedClearDay>>;

/** Moves the clear design day; a standard cycle is taken as it stands. */
const clearDay =
  (changes: (day: ClearDay, by: number) => Partial<ClearDay>) =>
  (moved: MovedSite, by: number): MovedSite => {
    const day = resolvedClearDay(moved.site);
    if (day === null) return moved;
    const { windFromDeg, coldNight } = moved.site.climate;
    const climate = {
      designDay: { ...day, ...changes(day, by) },
      ...(windFromDeg !== undefined && { windFromDeg }),
      ...(coldNight !== undefined && { coldNight }),
    };
    return { ...moved, site: { ...moved.site, climate } };
  };

/** The value of an input at a place in its range, 0 to 1. */
export function valueWithin({ kind, low, high }: InputSpread, place: number): number {
  return kind === 'shift' ? low + (high - low) * place : low * (high / low) ** place;
}

const always = (): boolean => true;
const hasClearDay = (site: Site): boolean => resolvedClearDay(site) !== null;

export const INPUT_SPREADS: readonly InputSpread[] = [
  {
    input: 'absorptance',
    moves: always,
    text: () => 'solar absorptance of box and hood, 0.1 either way',
    kind: 'shift',
    low: -0.1,
    high: 0.1,
    move: box(({ solarAbsorptance, hood }, by) => ({
      solarAbsorptance: share(solarAbsorptance + by),
      hood: hood && { ...hood, solarAbsorptance: share(hood.solarAbsorptance + by) },
    })),
  },
  {
    input: 'emittance',
    moves: always,
    text: () => 'emittance of box and hood, 0.05 either way',
    kind: 'shift',
    low: -0.05,
    high: 0.05,
    move: box(({ emittance, hood }, by) => ({
      emittance: share(emittance + by),
      hood: hood && { ...hood, emittance: share(hood.emittance + by) },
    })),
  },
  {
    input: 'power',
    moves: ({ box }) => box.powerW > 0 || (box.battery?.powerW ?? 0) > 0,
    text: () => 'heat given off inside, from four fifths to five quarters',
    kind: 'factor',
    low: 0.8,
    high: 1.25,
    move: box(({ powerW, battery, compartments }, by) => ({
      powerW: powerW * by,
      battery: battery && { ...battery, powerW: battery.powerW * by },
      compartments: compartments && { ...compartments, lowerPowerW: compartments.lowerPowerW * by },
    })),
  },
  {
    input: 'ambient',
    moves: hasClearDay,
    text: (units) => `highest outside air temperature, ${formatQuantity('temperatureDifference', 2, units)} either way`,
    kind: 'shift',
    low: -2,
    high: 2,
    move: clearDay(({ maxC }, by) => ({ maxC: maxC + by })),
  },
  {
    input: 'wind',
    moves: (site) => (site.climate.windMs ?? resolvedClearDay(site)?.windMs ?? 0) > 0,
    text: () => 'free wind, from half to twice',
    kind: 'factor',
    low: 0.5,
    high: 2,
    move: (moved, by) => {
      const { windMs } = moved.site.climate;
      if (windMs === undefined) return clearDay((day) => ({ windMs: day.windMs * by }))(moved, by);
      return { ...moved, site: { ...moved.site, climate: { ...moved.site.climate, windMs: windMs * by } } };
    },
  },
  {
    input: 'turbidity',
    moves: hasClearDay,
    text: () => 'Linke turbidity, 1 either way',
    kind: 'shift',
    low: -1,
    high: 1,
    move: clearDay(({ linkeTurbidity }, by) => ({ linkeTurbidity: Math.max(1, linkeTurbidity + by) })),
  },
  {
    input: 'wall',
    moves: always,
    text: () => 'solar absorptance of the walls, 0.1 either way',
    kind: 'shift',
    low: -0.1,
    high: 0.1,
    move: (moved, by) => ({
      ...moved,
      site: {
        ...moved.site,
        walls: moved.site.walls.map((wall) => ({ ...wall, solarAbsorptance: share(wall.solarAbsorptance + by) })),
      },
    }),
  },
  {
    input: 'ground',
    moves: always,
    text: () => 'ground albedo, 0.1 either way',
    kind: 'shift',
    low: -0.1,
    high: 0.1,
    move: (moved, by) => ({
      ...moved,
      site: {
        ...moved.site,
        ground: { albedo: share(moved.site.ground.albedo + by) },
        walls: moved.site.walls.map((wall) => ({
          ...wall,
          groundAlbedo: wall.groundAlbedo === null ? null : share(wall.groundAlbedo + by),
        })),
      },
    }),
  },
  {
    input: 'inside',
    moves: always,
    text: () => 'convection coefficients inside, from three quarters to four thirds',
    kind: 'factor',
    low: 0.75,
    high: 4 / 3,
    move: (moved, by) => ({ ...moved, insideFactor: by }),
  },
];
