/** What shows of a silhouette in the sun diagram, and where its letter may stand. */
import type { Silhouette, SkyChart } from '../../../model/index.ts';
import type { Point } from './plane.ts';

/** A place in the sky. */
export interface SkyPlace {
  readonly azimuthDeg: number;
  readonly elevationDeg: number;
}

/** Where in its bands a silhouette is asked whether it shows, as shares of their height. */
const BAND_SHARES = [0.5, 0.25, 0.75];

function placesIn({ lowDeg, highDeg, bearingDeg }: Silhouette['runs'][number][number]): SkyPlace[] {
  return BAND_SHARES.map((share) => ({
    azimuthDeg: bearingDeg,
    elevationDeg: lowDeg + share * (Math.min(90, highDeg) - lowDeg),
  }));
}

/** Whether something of a silhouette shows where `shows` tells whether nothing nearer covers it. */
export function showsAnywhere({ runs }: Silhouette, shows: (place: SkyPlace) => boolean): boolean {
  return runs.some((bands) => bands.some((band) => placesIn(band).some(shows)));
}

/** Where the letter of a silhouette may stand, the roomiest place first: only where nothing nearer covers it. */
export function letterPlaces({ runs }: Silhouette, chart: SkyChart, shows: (place: SkyPlace) => boolean): Point[] {
  const places = runs.flatMap((bands) =>
    bands.flatMap((band, k) => {
      const [x, low] = chart.at(band.bearingDeg, band.lowDeg);
      const [, high] = chart.at(band.bearingDeg, band.highDeg);
      const toEnd = Math.min(k, bands.length - 1 - k);
      const toEndPx = Math.abs(chart.at(band.bearingDeg + toEnd, 0)[0] - x);
      const roomPx = Math.min(low - high, 2 * toEndPx);
      return placesIn(band).map((place) => ({ place, roomPx }));
    }),
  );
  return places
    .filter(({ place }) => shows(place))
    .sort((a, b) => b.roomPx - a.roomPx)
    .map(({ place }) => chart.at(place.azimuthDeg, place.elevationDeg));
}
