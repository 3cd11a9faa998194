/** A screened row in the few arrays that it is kept in, and back. */
import type { ScreenedSite, ScreenedWall } from '../../model/index.ts';
import type { RowResult } from '../screening/output.ts';

type Wall = readonly [name: string, azimuthDeg: number, peakInsideAirC: number, marginK: number];

/** `best` counts within `walls`. */
type Packed = readonly [
  place: readonly [latitudeDeg: number, longitudeDeg: number, altitudeM: number],
  climate: readonly [RowResult['site']['climate']['source'], string, number | null],
  compass: boolean,
  walls: readonly Wall[],
  best: number,
  insideShare: number,
  remedy: ScreenedSite['remedy'],
  kit: ScreenedSite['kit'],
];

export function packRow({ site, place, result }: RowResult): string {
  const { source, text, distanceKm } = site.climate;
  const packed: Packed = [
    [place.latitudeDeg, place.longitudeDeg, place.altitudeM],
    [source, text, distanceKm],
    site.compass,
    result.walls.map(({ name, azimuthDeg, peakInsideAirC, marginK }) => [name, azimuthDeg, peakInsideAirC, marginK]),
    result.walls.findIndex(({ name }) => name === result.best?.name),
    result.insideShare,
    result.remedy,
    result.kit,
  ];
  return JSON.stringify(packed);
}

export function unpackRow(row: number, cells: readonly string[], text: string): RowResult {
  const [place, [source, climate, distanceKm], compass, packed, best, insideShare, remedy, kit] = JSON.parse(
    text,
  ) as Packed;
  const walls = packed.map(([name, azimuthDeg, peakInsideAirC, marginK]): ScreenedWall => {
    return { name, azimuthDeg, peakInsideAirC, marginK };
  });
  return {
    record: { row, line: row, cells },
    site: { compass, climate: { source, text: climate, distanceKm } },
    place: { latitudeDeg: place[0], longitudeDeg: place[1], altitudeM: place[2] },
    result: { walls, best: walls[best] ?? null, insideShare, remedy, kit },
  };
}
