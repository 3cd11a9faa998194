/** Where a row is: its coordinates and its altitude, read once as the model reads numbers with units, for all that ask about them. */
import { FIELDS, readQuantityText } from '../../model/index.ts';
import type { ColumnKey } from './columns.ts';

/** Undefined where the row says nothing, and where what it says is no number: the site's own check tells that. */
export interface RowPlace {
  readonly latitudeDeg: number | undefined;
  readonly longitudeDeg: number | undefined;
  readonly altitudeM: number | undefined;
}

export function rowPlace(cell: (key: ColumnKey) => string | undefined): RowPlace {
  const number = (key: ColumnKey, path: 'place.latitudeDeg' | 'place.longitudeDeg' | 'place.altitudeM') => {
    const text = cell(key);
    return text === undefined ? undefined : (readQuantityText(text, FIELDS[path].kind) ?? undefined);
  };
  return {
    latitudeDeg: number('latitude', 'place.latitudeDeg'),
    longitudeDeg: number('longitude', 'place.longitudeDeg'),
    altitudeM: number('altitude', 'place.altitudeM'),
  };
}
