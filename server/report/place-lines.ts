import { formatQuantity, type Site, type UnitSystem } from '../../model/index.ts';

const LIMIT_WORDS: Record<Site['limits']['refersTo'], string> = {
  insideAir: 'air inside the box',
  outsideAir: 'outside air',
  componentCase: 'component case',
};

/** Title, place and day of a report, and the limit that its margins refer to. */
export function placeLines(
  site: Pick<Site, 'title' | 'place' | 'limits'>,
  day: { date: string; timeZone: string },
  units: UnitSystem,
): string[] {
  const { latitudeDeg, longitudeDeg, altitudeM } = site.place;
  const latitude = `${degrees(latitudeDeg)}° ${latitudeDeg < 0 ? 'S' : 'N'}`;
  const longitude = `${degrees(longitudeDeg)}° ${longitudeDeg < 0 ? 'W' : 'E'}`;
  const altitude = formatQuantity('length', altitudeM, units, 0);
  const { minC, maxC, refersTo } = site.limits;
  const limits = `${formatQuantity('temperature', minC, units, 0)} to ${formatQuantity('temperature', maxC, units, 0)}`;
  return [
    site.title,
    `${latitude}, ${longitude}, ${altitude}; design day ${day.date}, clock of ${day.timeZone}`,
    `limits ${limits}, ${LIMIT_WORDS[refersTo]}`,
  ];
}

/** Four decimals are some ten metres, finer than a site needs. */
function degrees(value: number): string {
  return String(Number(Math.abs(value).toFixed(4)));
}
