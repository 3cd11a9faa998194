/**
 * A small table to try a screening with: forty homesteads along an invented road through a hot basin, made by a plain rule. No
 * place in it is anybody's.
 */

export const EXAMPLE_NAME = 'example-basin-road.csv';

const FINISHES = ['lightGreyPaint', 'whitePaint', 'greenPaint', 'beigePaint'];
const ROWS = 40;

/** The road climbs from a hot floor; every fifth house turns its walls, every sixth box gives off more. */
export function exampleTable(): string {
  const head = 'id,latitude,longitude,altitude,finish,power,bearings,eave,design max,crew';
  const rows = Array.from({ length: ROWS }, (_, k) => {
    const along = k / (ROWS - 1);
    const latitude = 33.05 + 0.42 * along + 0.03 * Math.sin(k * 1.7);
    const longitude = -113.9 + 0.75 * along + 0.04 * Math.cos(k * 2.3);
    const altitude = Math.round(180 + 950 * along ** 1.5);
    // Air cools by some 6.5 K in a kilometre.
    const designMax = (48.5 - 0.0065 * (altitude - 180)).toFixed(1);
    return [
      `basin road ${k + 1}`,
      latitude.toFixed(4),
      longitude.toFixed(4),
      altitude,
      FINISHES[k % FINISHES.length],
      k % 6 === 5 ? 28 : 14,
      k % 5 === 4 ? '20 110 200 290' : '',
      k % 4 === 1 ? 0.9 : '',
      designMax,
      k % 2 === 0 ? 'east' : 'west',
    ].join(',');
  });
  return `${[head, ...rows].join('\n')}\n`;
}
