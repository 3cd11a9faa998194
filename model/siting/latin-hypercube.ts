/** Samples of several inputs at once that cover the range of each evenly, and ranks of what came out. */

/**
 * A Latin hypercube: `count` points in `inputs` dimensions of [0, 1), each dimension cut into `count` equal parts that hold
 * one point each. Source: McKay, Beckman and Conover 1979, Technometrics 21:239.
 */
export function latinHypercube(count: number, inputs: number, random: () => number): number[][] {
  const columns = Array.from({ length: inputs }, () => {
    const parts = Array.from({ length: count }, (_, k) => k);
    for (let k = count - 1; k > 0; k--) {
      const other = Math.floor(random() * (k + 1));
      [parts[k], parts[other]] = [parts[other] as number, parts[k] as number];
    }
    return parts.map((part) => (part + random()) / count);
  });
  return Array.from({ length: count }, (_, k) => columns.map((column) => column[k] as number));
}

/** The value below which a share of the values lies, straight between neighbours. */
export function quantile(values: readonly number[], part: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  const position = part * (sorted.length - 1);
  const below = Math.floor(position);
  const low = sorted[below] as number;
  const high = sorted[Math.min(below + 1, sorted.length - 1)] as number;
  return low + (high - low) * (position - below);
}

/** Spearman's rank correlation of two lists without ties to speak of, -1 to 1; 0 where one of them does not move. */
export function rankCorrelation(a: readonly number[], b: readonly number[]): number {
  const [ranksA, ranksB] = [ranks(a), ranks(b)];
  const middle = (a.length - 1) / 2;
  let ab = 0;
  let aa = 0;
  let bb = 0;
  for (let k = 0; k < a.length; k++) {
    const [x, y] = [(ranksA[k] as number) - middle, (ranksB[k] as number) - middle];
    ab += x * y;
    aa += x * x;
    bb += y * y;
  }
  return aa > 0 && bb > 0 ? ab / Math.sqrt(aa * bb) : 0;
}

/** Ranks from 0; equal values share their mean rank. */
function ranks(values: readonly number[]): number[] {
  const order = values.map((value, index) => ({ value, index })).sort((a, b) => a.value - b.value);
  const found = new Array<number>(values.length).fill(0);
  for (let from = 0; from < order.length; ) {
    let to = from;
    while (to + 1 < order.length && order[to + 1]?.value === order[from]?.value) to++;
    for (let k = from; k <= to; k++) found[order[k]?.index as number] = (from + to) / 2;
    from = to + 1;
  }
  return found;
}
