/**
 * The site as it stands in the form: JSON of the site file's shape, with text where somebody typed text. It may be
 * incomplete or wrong, and an imported file may hold anything, so nothing here trusts its shape.
 */
export type Draft = { readonly [key: string]: unknown };

/** The only two numbers of a site file that are one optional value. */
const PAIR = 'constraints.mountHeightM';

export function isDraft(value: unknown): value is Draft {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** What stands at a path such as "walls.0.azimuthDeg"; undefined where nothing does. The empty path is the draft. */
export function valueAt(root: unknown, path: string): unknown {
  let node = root;
  for (const key of keysOf(path)) {
    if (typeof node !== 'object' || node === null || !Object.hasOwn(node, key)) return undefined;
    node = (node as Draft)[key];
  }
  return node;
}

/** A draft with another value at a path; undefined takes the field out. At the empty path stands another draft. */
export function withValue(draft: Draft, path: string, value: unknown): Draft {
  const changed = placed(draft, keysOf(path), value) as Draft;
  return withoutAssumed(withoutEmptyPair(changed), path);
}

/** A draft without one entry of a list. */
export function withoutEntry(draft: Draft, listPath: string, index: number): Draft {
  const list = listAt(draft, listPath);
  return withValue(draft, listPath, list.toSpliced(index, 1));
}

/** The list at a path; empty where none stands there. */
export function listAt(draft: unknown, path: string): readonly unknown[] {
  const list = valueAt(draft, path);
  return Array.isArray(list) ? list : [];
}

/** The text at a path; empty where none stands there. */
export function textAt(draft: unknown, path: string): string {
  const text = valueAt(draft, path);
  return typeof text === 'string' ? text : '';
}

function keysOf(path: string): string[] {
  return path === '' ? [] : path.split('.');
}

function placed(node: unknown, keys: readonly string[], value: unknown): unknown {
  const [key, ...rest] = keys;
  if (key === undefined) return value;
  if (Array.isArray(node) || (!isDraft(node) && /^\d+$/.test(key))) {
    const list: unknown[] = Array.isArray(node) ? [...node] : [];
    list[Number(key)] = placed(list[Number(key)], rest, value);
    return list;
  }
  const copy: Record<string, unknown> = isDraft(node) ? { ...node } : {};
  const inner = placed(copy[key], rest, value);
  if (inner === undefined) delete copy[key];
  else copy[key] = inner;
  return copy;
}

/** A pair with both fields emptied is a pair that was left out. */
function withoutEmptyPair(draft: Draft): Draft {
  const pair = listAt(draft, PAIR);
  const empty = pair.length > 0 && pair.every((entry) => (entry ?? null) === null);
  return empty ? (placed(draft, PAIR.split('.'), undefined) as Draft) : draft;
}

/** What a person enters is no longer something that the program assumed. */
function withoutAssumed(draft: Draft, path: string): Draft {
  const { assumed, ...rest } = draft;
  if (!Array.isArray(assumed)) return draft;
  const kept = assumed.filter((other) => other !== path && !String(other).startsWith(`${path}.`));
  return { ...rest, assumed: kept };
}
