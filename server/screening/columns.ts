/** The columns that a screening reads: what each one sets in a site, and the names by which it is found. */
import { BadInput } from '../bad-input.ts';
import { type HeaderUnit, headerUnit, LONGEST_NAME, withoutUnit } from './header-units.ts';

export interface ColumnKind {
  readonly key: string;
  /** Where the value goes in a site file; of a wall, it goes into every one. */
  readonly path: string;
  readonly label: string;
  /** Further names, written as `plain` makes them. */
  readonly names: readonly string[];
}

export const COLUMN_KINDS = [
  { key: 'latitude', path: 'place.latitudeDeg', label: 'latitude, north positive', names: ['lat', 'y', 'latitudedeg'] },
  {
    key: 'longitude',
    path: 'place.longitudeDeg',
    label: 'longitude, east positive',
    names: ['lon', 'lng', 'long', 'x', 'longitudedeg'],
  },
  { key: 'altitude', path: 'place.altitudeM', label: 'altitude, m', names: ['elevation', 'altitudem', 'elevationm'] },
  { key: 'timeZone', path: 'place.timeZone', label: 'IANA time zone', names: ['tz', 'zone'] },
  {
    key: 'bearings',
    path: 'walls',
    label: 'bearings that the walls face, all different, parted by spaces: "8 98 SW" or "8 deg 98 deg"',
    names: ['walls', 'wallbearings', 'azimuths', 'bearing', 'azimuth', 'facing'],
  },
  { key: 'finish', path: 'box.finish', label: 'finish of the box', names: ['boxfinish', 'colour', 'color'] },
  {
    key: 'absorptance',
    path: 'box.solarAbsorptance',
    label: 'solar absorptance of the box',
    names: ['solarabsorptance', 'alpha'],
  },
  { key: 'power', path: 'box.powerW', label: 'heat given off inside, W', names: ['powerw', 'watts', 'heat', 'heatw'] },
  {
    key: 'limit',
    path: 'limits.maxC',
    label: 'upper limit, degC',
    names: ['limitc', 'upperlimit', 'upperlimitc', 'maxlimit', 'maxlimitc'],
  },
  {
    key: 'lowerLimit',
    path: 'limits.minC',
    label: 'lower limit, degC',
    names: ['lowerlimitc', 'minlimit', 'minlimitc'],
  },
  {
    key: 'limitOf',
    path: 'limits.refersTo',
    label: 'what the limits refer to: insideAir, outsideAir, componentCase',
    names: ['refersto', 'limitrefersto'],
  },
  {
    key: 'climate',
    path: 'climate',
    label: 'name of a climate sample or standard cycle',
    names: ['climatesample', 'sample', 'cycle'],
  },
  {
    key: 'designMax',
    path: 'climate.designDay.maxC',
    label: 'highest air temperature of the design day, degC',
    names: ['maxc', 'designmaxc', 'designtemperature', 'designtemperaturec', 'maxair', 'maxairc'],
  },
  {
    key: 'dailyRange',
    path: 'climate.designDay.dailyRangeK',
    label: 'its daily range, K',
    names: ['dailyrangek', 'range', 'rangek'],
  },
  {
    key: 'dewPoint',
    path: 'climate.designDay.dewPointC',
    label: 'its dew point, degC',
    names: ['dewpointc', 'dew', 'dewc'],
  },
  { key: 'wind', path: 'climate.designDay.windMs', label: 'its wind, m/s', names: ['windms', 'windspeed'] },
  {
    key: 'turbidity',
    path: 'climate.designDay.linkeTurbidity',
    label: 'its Linke turbidity',
    names: ['linketurbidity', 'linke'],
  },
  { key: 'date', path: 'climate.designDay.date', label: 'its date, such as 2026-07-21', names: ['designdate', 'day'] },
  {
    key: 'eaveDepth',
    path: 'walls.eave.depthM',
    label: 'depth of the eave over every wall, m',
    names: ['eave', 'eavem', 'eavedepthm', 'overhang', 'overhangm'],
  },
  {
    key: 'eaveHeight',
    path: 'walls.eave.heightAboveBoxM',
    label: 'height of the eave above the box, m',
    names: ['eaveheightm', 'eaveabovebox', 'eaveaboveboxm'],
  },
  {
    key: 'construction',
    path: 'walls.construction',
    label: 'construction of the walls',
    names: ['wallconstruction', 'cladding'],
  },
  { key: 'albedo', path: 'ground.albedo', label: 'ground albedo', names: ['groundalbedo'] },
  { key: 'width', path: 'box.widthM', label: 'width of the box, m', names: ['widthm', 'boxwidth', 'boxwidthm'] },
  { key: 'height', path: 'box.heightM', label: 'height of the box, m', names: ['heightm', 'boxheight', 'boxheightm'] },
  { key: 'depth', path: 'box.depthM', label: 'depth of the box, m', names: ['depthm', 'boxdepth', 'boxdepthm'] },
] as const satisfies readonly ColumnKind[];

export type ColumnKey = (typeof COLUMN_KINDS)[number]['key'];

/** Which column of the header holds what, counted from 0. */
export type ColumnMatch = Readonly<Partial<Record<ColumnKey, number>>>;

const KEYS = COLUMN_KINDS.map(({ key }) => key);

/** Without these a row is no place. */
export const REQUIRED_COLUMNS = ['latitude', 'longitude'] as const satisfies readonly ColumnKey[];

/** A name without what writers differ in: case, spaces, punctuation, and what stands in brackets, of which units are read apart. */
export function plain(name: string): string {
  return name
    .slice(0, LONGEST_NAME)
    .toLowerCase()
    .replace(/[([].*?[)\]]/g, '')
    .replace(/[^\p{L}\p{N}]/gu, '');
}

/** Columns by their names, the first that fits; an explicit one comes before. */
export function matchColumns(header: readonly string[], explicit: Readonly<Record<string, string>> = {}): ColumnMatch {
  const problems: string[] = [];
  const match: Partial<Record<ColumnKey, number>> = {};
  const users = new Map<number, ColumnKey>();
  for (const [key, name] of Object.entries(explicit)) {
    const known = COLUMN_KINDS.find((kind) => plain(kind.key) === plain(key));
    const at = header.indexOf(name);
    const found = at >= 0 ? at : header.findIndex((column) => column.toLowerCase() === name.toLowerCase());
    const user = users.get(found);
    if (!known)
      problems.push(`--columns ${key}=${name}: "${key}" is no column of a screening; known: ${KEYS.join(', ')}`);
    else if (name === '') continue;
    else if (found < 0)
      problems.push(`--columns ${key}=${name}: the table has no column "${name}"; it has ${list(header)}`);
    else if (user !== undefined && user !== known.key)
      problems.push(`--columns ${key}=${name}: column "${name}" stands for ${user} already`);
    else {
      users.set(found, known.key);
      match[known.key] = found;
    }
  }
  // Named and left empty: not to be looked for.
  const left = Object.entries(explicit).flatMap(([key, name]) => (name === '' ? [plain(key)] : []));
  const all = matchByName(
    header,
    match,
    KEYS.filter((key) => left.includes(plain(key))),
  );
  const misnamed = problems.length > 0;
  for (const key of REQUIRED_COLUMNS) {
    if (all[key] !== undefined || misnamed) continue;
    const names = COLUMN_KINDS.find((kind) => kind.key === key)
      ?.names.slice(0, 3)
      .join(', ');
    problems.push(
      `no column for the ${key}; name one ${key} (or ${names}), or say --columns ${key}=NAME; it has ${list(header)}`,
    );
  }
  if (problems.length > 0) throw new BadInput(problems);
  return all;
}

/** Say something of a design day beside its highest temperature only; alone they are some other wind, date or range. */
const BESIDE_DESIGN_MAX: readonly ColumnKey[] = ['dailyRange', 'dewPoint', 'wind', 'turbidity', 'date'];

/**
 * Adds to a match what the names of the columns tell, each column once; `left` are not looked for. What belongs to a design day
 * is passed through in a table that has no highest temperature of one.
 */
export function matchByName(
  header: readonly string[],
  known: ColumnMatch = {},
  left: readonly ColumnKey[] = [],
): ColumnMatch {
  const match: Partial<Record<ColumnKey, number>> = { ...known };
  const taken = new Set(Object.values(known));
  for (const { key, path, names } of COLUMN_KINDS) {
    if (match[key] !== undefined || left.includes(key)) continue;
    const wanted = [plain(key), ...names];
    const isIt = (column: string) =>
      wanted.includes(plain(column)) || wanted.includes(plain(withoutUnit(column, path)));
    const at = header.findIndex((column, k) => !taken.has(k) && isIt(column));
    if (at >= 0) {
      match[key] = at;
      taken.add(at);
    }
  }
  if (match.designMax === undefined) {
    for (const key of BESIDE_DESIGN_MAX) if (known[key] === undefined) delete match[key];
  }
  return match;
}

/** Units that the names of matched columns tell and that are not those of the model, or do not fit. */
export function columnUnits(
  header: readonly string[],
  match: ColumnMatch,
): ReadonlyMap<ColumnKey, HeaderUnit & { readonly column: string }> {
  const units = new Map<ColumnKey, HeaderUnit & { column: string }>();
  for (const { key, path } of COLUMN_KINDS) {
    const at = match[key];
    const column = at === undefined ? '' : (header[at] ?? '');
    const found = headerUnit(column, path);
    if (found !== undefined && found.unit !== '') units.set(key, { ...found, column });
  }
  return units;
}

/** Reads "latitude=Y,longitude=X". */
export function readColumnOption(text: string): Record<string, string> {
  const pairs = text.split(',').map((pair) => pair.split('='));
  const wrong = pairs.find((pair) => pair.length < 2 || pair[0]?.trim() === '');
  if (wrong) throw new BadInput([`--columns ${text}: "${wrong.join('=')}" is no pair such as latitude=Y`]);
  return Object.fromEntries(pairs.map(([key = '', ...name]) => [key.trim(), name.join('=').trim()]));
}

function list(header: readonly string[]): string {
  const shown = header.slice(0, 12).join(', ');
  return header.length > 12 ? `${shown} …` : shown;
}
