/**
 * Names for the columns of a table that all differ, so that nothing that goes by a name is lost, and results can be screened again.
 * Names are the same where a table with both would be refused: capitals do not matter, nor does the apostrophe before a formula.
 */

/** Those without a name go by their number. */
export function columnNames(header: readonly string[]): string[] {
  const taken = new Set(header.map(keyOf));
  return header.map((name, k) => (name === '' ? firstFree(`column_${k + 1}`, taken) : name));
}

/** Names as they stand beside the names `own` of something else: those that both have are told apart. */
export function namesBeside(names: readonly string[], own: readonly string[]): string[] {
  const taken = new Set(own.map(keyOf));
  // What may keep its name comes before what has to look for another.
  const kept = names.map((name) => {
    const free = !taken.has(keyOf(name));
    taken.add(keyOf(name));
    return free;
  });
  return names.map((name, k) => (kept[k] ? name : firstFree(`input_${name}`, taken)));
}

const keyOf = (name: string): string => name.trim().replace(/^'+/, '').toLowerCase();

/** The name itself, or with the first number behind it that nobody has; it is taken from now on. */
function firstFree(name: string, taken: Set<string>): string {
  let free = name;
  for (let n = 2; taken.has(keyOf(free)); n++) free = `${name}_${n}`;
  taken.add(keyOf(free));
  return free;
}
