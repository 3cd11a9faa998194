/** Places on a regular grid, row by row from the south-west. */
import { BadInput } from '../bad-input.ts';
import type { TableRecord } from './records.ts';

export interface Grid {
  readonly westDeg: number;
  readonly southDeg: number;
  readonly eastDeg: number;
  readonly northDeg: number;
  readonly stepDeg: number;
}

export const GRID_HEADER = ['latitude', 'longitude'] as const;

export const MOST_GRID_POINTS = 5_000_000;

/**
 * Reads "west,south,east,north" and the step.
 * @throws BadInput naming everything that is wrong
 */
export function readGrid(box: string, step: string | undefined): Grid {
  const [westDeg, southDeg, eastDeg, northDeg, ...more] = box
    .split(',')
    .map((part) => (part.trim() === '' ? Number.NaN : Number(part)));
  const stepDeg = step === undefined || step.trim() === '' ? Number.NaN : Number(step);
  const problems: string[] = [];
  const within = (value: number | undefined, most: number) => value !== undefined && Math.abs(value) <= most;
  if (
    more.length > 0 ||
    !within(westDeg, 180) ||
    !within(eastDeg, 180) ||
    !within(southDeg, 90) ||
    !within(northDeg, 90)
  ) {
    problems.push(`--grid ${box}: west,south,east,north in degrees are needed, such as -114,33,-113,34`);
  } else if ((southDeg ?? 0) > (northDeg ?? 0)) problems.push(`--grid ${box}: the south lies north of the north`);
  if (!(stepDeg > 0 && stepDeg <= 90)) {
    const found =
      step === undefined ? 'is needed with --grid' : `${step}: a step above 0 and up to 90 degrees is needed`;
    problems.push(`--step ${found}`);
  }
  if (problems.length > 0) throw new BadInput(problems);
  const grid = { westDeg, southDeg, eastDeg, northDeg, stepDeg } as Grid;
  if (gridSize(grid) > MOST_GRID_POINTS) {
    throw new BadInput([
      `--grid ${box} --step ${step}: ${gridSize(grid)} points; up to ${MOST_GRID_POINTS} are allowed`,
    ]);
  }
  return grid;
}

/** Points that lie on the grid, edges included. */
export function gridSize(grid: Grid): number {
  const { across, up } = counts(grid);
  return across * up;
}

/** A box whose west lies east of its east crosses the 180th meridian. */
function counts({ westDeg, southDeg, eastDeg, northDeg, stepDeg }: Grid) {
  const spanDeg = eastDeg >= westDeg ? eastDeg - westDeg : eastDeg - westDeg + 360;
  // The last point may miss the edge by the noise of binary fractions.
  const along = (deg: number) => Math.floor(deg / stepDeg + 1e-9) + 1;
  return { across: along(spanDeg), up: along(northDeg - southDeg) };
}

/** The places as records of a table with the header `GRID_HEADER`, in chunks; rows count from 1. */
export async function* gridRecords(grid: Grid): AsyncGenerator<TableRecord[]> {
  const { across, up } = counts(grid);
  for (let j = 0; j < up; j++) {
    const latitude = tidy(grid.southDeg + j * grid.stepDeg);
    for (let from = 0; from < across; from += 1000) {
      yield Array.from({ length: Math.min(1000, across - from) }, (_, k): TableRecord => {
        const deg = grid.westDeg + (from + k) * grid.stepDeg;
        const row = j * across + from + k + 1;
        return { row, line: row, cells: [String(latitude), String(tidy(deg > 180 ? deg - 360 : deg))] };
      });
    }
  }
}

/** A tenth of a metre is finer than any grid. */
const tidy = (deg: number): number => Number(deg.toFixed(6));
