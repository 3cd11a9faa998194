/** Results kept by what they depend on. Whoever makes a memory owns it. */
export interface Memory<Value> {
  /** What is kept under a key, or a new one; `key` must name everything that `prepare` makes use of. */
  recall(key: string, prepare: () => Value): Value;
}

/** @param most values kept at most; the one unused for the longest goes first */
export function memory<Value>(most: number): Memory<Value> {
  const kept = new Map<string, Value>();
  return {
    recall(key, prepare) {
      const value = kept.has(key) ? (kept.get(key) as Value) : prepare();
      // Back to the end: the first entry of a map is its oldest.
      kept.delete(key);
      kept.set(key, value);
      if (kept.size > most) kept.delete(kept.keys().next().value as string);
      return value;
    },
  };
}
