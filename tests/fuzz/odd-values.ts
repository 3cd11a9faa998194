/** Values at the edges of what JSON and JavaScript hold, and ways to plant them in something that was right before. */
import fc from 'fast-check';

/** Numbers, texts and shapes that trip readers up. */
export const ODD_VALUES: readonly unknown[] = [
  ...[1e308, -1e308, Number.MAX_SAFE_INTEGER + 2, -0, 5e-324, 1e-300, Number.NaN, Number.POSITIVE_INFINITY],
  ...[
    '',
    ' ',
    '１２',
    '١٢',
    '12,5',
    '1e309',
    '0x10',
    '12 parsec',
    '12 in in',
    'NaN',
    '-',
    '\u0000',
    '\u202e21',
    '\ud800',
  ],
  ...[
    '9'.repeat(400),
    'x'.repeat(100_000),
    `${'('.repeat(2000)}1${')'.repeat(2000)}`,
    '1 '.repeat(5000),
    '=1+1',
    '<b>',
  ],
  ...['2026-02-30', '9999-12-31', '-000001-01-01', '__proto__', 'constructor', 'toString'],
  ...[null, true, false, [], {}, [[]], [null], nested(400, (inner) => [inner]), nested(400, (inner) => ({ a: inner }))],
  ...[JSON.parse('{"__proto__":{"polluted":true}}'), JSON.parse('{"constructor":{"prototype":{"polluted":true}}}')],
  ...[
    { length: 3 },
    new Array(3),
    Array.from({ length: 5000 }, () => 0),
    new Date(Number.NaN),
    10n,
    () => 1,
    Symbol('s'),
  ],
];

function nested(depth: number, wrap: (inner: unknown) => unknown): unknown {
  let inner: unknown = 1;
  for (let level = 0; level < depth; level += 1) inner = wrap(inner);
  return inner;
}

export const oddValue = fc.oneof(
  { weight: 3, arbitrary: fc.constantFrom(...ODD_VALUES) },
  { weight: 1, arbitrary: fc.anything({ withNullPrototype: true, withSparseArray: true, maxDepth: 3 }) },
  { weight: 1, arbitrary: fc.double() },
  { weight: 1, arbitrary: fc.string({ unit: 'binary', maxLength: 40 }) },
);

/** What JSON can carry of them. */
export const oddJson = fc.oneof(
  fc.constantFrom(...ODD_VALUES.filter((value) => isJson(value))),
  fc.jsonValue({ maxDepth: 3 }),
  fc.double({ noNaN: true, noDefaultInfinity: true }),
);

function isJson(value: unknown): boolean {
  return ['string', 'boolean'].includes(typeof value) || Number.isFinite(value) || isPlain(value);
}

function isPlain(value: unknown): boolean {
  return value === null || Array.isArray(value) || (typeof value === 'object' && !(value instanceof Date));
}

/** A share from 0 to below 1, each as likely as the next: doubles of fast-check crowd near zero. */
export const share = fc.nat({ max: 999_999 }).map((millionths) => millionths / 1e6);

export interface Change {
  /** Which of the places in the value, as a share of their number. */
  readonly at: number;
  readonly how: 'replace' | 'remove' | 'add';
  readonly value: unknown;
}

/** One to four changes of a value that was right. */
export function changesOf(value: fc.Arbitrary<unknown>): fc.Arbitrary<readonly Change[]> {
  const how = fc.constantFrom(
    'replace' as const,
    'replace' as const,
    'replace' as const,
    'remove' as const,
    'add' as const,
  );
  return fc.array(fc.record({ at: share, how, value }), { minLength: 1, maxLength: 4 });
}

/** A copy of `right` with the changes made to it. */
export function planted(right: unknown, changes: readonly Change[]): unknown {
  const root = { root: structuredClone(right) };
  for (const { at, how, value } of changes) {
    const places = placesIn(root);
    const place = places[Math.floor(at * places.length)];
    if (place === undefined) continue;
    const [owner, key] = place;
    if (how === 'remove' && owner !== root) delete owner[key];
    else if (how === 'add' && isHolder(owner[key])) (owner[key] as Record<string, unknown>)['added'] = value;
    else owner[key] = value;
  }
  return root.root;
}

type Holder = Record<string, unknown>;

function isHolder(value: unknown): value is Holder {
  return typeof value === 'object' && value !== null && !Object.isFrozen(value);
}

/** Every place that holds something, as its holder and key; not deeper than a site goes. */
function placesIn(holder: Holder, depth = 0): [Holder, string][] {
  if (depth > 8) return [];
  return Object.keys(holder)
    .slice(0, 60)
    .flatMap((key) => {
      const inner = holder[key];
      return [[holder, key] as [Holder, string], ...(isHolder(inner) ? placesIn(inner, depth + 1) : [])];
    });
}

/** The longest that one reading may take, ms of processor time: a hang is far longer, a busy machine does not count. */
export const LONGEST_MS = 1000;

/** Runs `work` and gives back the processor time that it took, ms. */
export function processorMs(work: () => void): number {
  const before = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
}
