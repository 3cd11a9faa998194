/** Land and borders of the world at 1:110 million (Natural Earth, in the public domain). Loaded when there is a map. */

import type { GeoPermissibleObjects } from 'd3-geo';
import type { MultiLineString } from 'geojson';
import { feature, mesh } from 'topojson-client';
import type { GeometryCollection, Topology } from 'topojson-specification';

export interface Outlines {
  readonly land: GeoPermissibleObjects;
  readonly borders: MultiLineString;
}

type Atlas = Topology<{ land: GeometryCollection; countries: GeometryCollection }>;

/** Rejects where they cannot be loaded. */
export async function loadOutlines(): Promise<Outlines> {
  const { default: loaded } = await import('world-atlas/countries-110m.json');
  const atlas = loaded as unknown as Atlas;
  const { land, countries } = atlas.objects;
  return { land: feature(atlas, land), borders: mesh(atlas, countries, (a, b) => a !== b) };
}
