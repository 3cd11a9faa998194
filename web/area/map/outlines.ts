/** Land and borders of the world at 1:110 million (Natural Earth, in the public domain). Loaded when there is a map. */

import type { GeoPermissibleObjects } from 'd3-geo';
import { feature, mesh } from 'topojson-client';

export interface Outlines {
  readonly land: GeoPermissibleObjects;
  readonly borders: GeoPermissibleObjects;
}

type Topology = Parameters<typeof mesh>[0];
type Shape = NonNullable<Parameters<typeof mesh>[1]>;

/** Rejects where they cannot be loaded. */
export async function loadOutlines(): Promise<Outlines> {
  const { default: loaded } = await import('world-atlas/countries-110m.json');
  const atlas = loaded as unknown as Topology;
  const { land, countries } = atlas.objects as { land: Shape; countries: Shape };
  return { land: feature(atlas, land), borders: mesh(atlas, countries, (a, b) => a !== b) };
}
