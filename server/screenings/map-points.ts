/** The places of a screening for a map: all of them, or where they are too many the worst one of each cell. */
import type { Database } from 'better-sqlite3';

export const MOST_POINTS = 20_000;

/** Cells begin at this size, degrees (some ten metres), and double until few enough are taken. */
const FINEST_CELL_DEG = 1e-4;

/** Rows read at a time; others have their turn between. */
const AT_ONCE = 10_000;

interface Point {
  readonly row: number;
  readonly latitude: number;
  readonly longitude: number;
  /** Null where no wall is permitted, which is worse than any margin. */
  readonly margin: number | null;
  readonly kit: number;
}

export interface MapPoints {
  readonly row: number[];
  readonly latitudeDeg: number[];
  readonly longitudeDeg: number[];
  readonly marginK: (number | null)[];
  /** Counts within `kits`. */
  readonly kit: number[];
  readonly kits: string[];
  /** Whether points stand for others near them, whose margin is no worse. */
  readonly thinned: boolean;
  /** All places, those that are not shown included. */
  readonly total: number;
  /** Size of a cell, where they are thinned. */
  readonly cellDeg: number | null;
}

export const NO_POINTS: MapPoints = {
  ...{ row: [], latitudeDeg: [], longitudeDeg: [], marginK: [], kit: [], kits: [] },
  ...{ thinned: false, total: 0, cellDeg: null },
};

/** Reads the places; memory is bounded by `most`. */
export async function mapPoints(db: Database, most = MOST_POINTS): Promise<MapPoints> {
  const total = db.prepare<[], { n: number }>('SELECT count(*) AS n FROM address').get()?.n ?? 0;
  const kits = db
    .prepare<[], { name: string }>('SELECT name FROM kit ORDER BY number')
    .all()
    .map(({ name }) => name);
  const next = db.prepare<[number, number], Point>(
    'SELECT row, latitude, longitude, margin, kit FROM address WHERE row > ? ORDER BY row LIMIT ?',
  );
  const thinned = total > most;
  const all: Point[] = [];
  const cells = worstOfCells(most);
  for (let last = -1; ; ) {
    const rows = next.all(last, AT_ONCE);
    for (const point of rows) {
      if (thinned) cells.add(point);
      else all.push(point);
    }
    if (rows.length < AT_ONCE) break;
    last = rows.at(-1)?.row ?? last;
    await new Promise((resolve) => setImmediate(resolve));
  }
  const shown = thinned ? cells.points() : all;
  return {
    row: shown.map(({ row }) => row),
    latitudeDeg: shown.map(({ latitude }) => rounded(latitude, 5)),
    longitudeDeg: shown.map(({ longitude }) => rounded(longitude, 5)),
    marginK: shown.map(({ margin }) => (margin === null ? null : rounded(margin, 2))),
    kit: shown.map(({ kit }) => kit),
    ...{ kits, thinned, total },
    cellDeg: thinned ? cells.sizeDeg() : null,
  };
}

const worth = ({ margin }: Point): number => margin ?? Number.NEGATIVE_INFINITY;

/** Keeps the point with the least margin of each cell; the cells grow when more than `most` are taken. */
export function worstOfCells(most: number) {
  let sizeDeg = FINEST_CELL_DEG;
  let kept = new Map<string, Point>();
  const put = (point: Point): void => {
    const key = `${Math.floor(point.latitude / sizeDeg)} ${Math.floor(point.longitude / sizeDeg)}`;
    const there = kept.get(key);
    if (there === undefined || worth(point) < worth(there)) kept.set(key, point);
  };
  return {
    add(point: Point): void {
      put(point);
      while (kept.size > most) {
        const points = [...kept.values()];
        sizeDeg *= 2;
        kept = new Map();
        for (const one of points) put(one);
      }
    },
    points: (): Point[] => [...kept.values()].sort((a, b) => a.row - b.row),
    sizeDeg: () => sizeDeg,
  };
}

function rounded(value: number, digits: number): number {
  const scale = 10 ** digits;
  return Math.round(value * scale) / scale;
}
