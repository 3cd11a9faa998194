/** Stretches of a day in which something holds. */

export interface TimeSpan {
  readonly fromUtc: Date;
  /** The first instant in which it does not hold any more. */
  readonly toUtc: Date;
}

/** The stretches of equal steps, each `stepMs` long, in which `holds` says yes; in order. */
export function spansWhere(steps: readonly Date[], stepMs: number, holds: (step: number) => boolean): TimeSpan[] {
  const spans: TimeSpan[] = [];
  let open = false;
  for (const [step, fromUtc] of steps.entries()) {
    const held = holds(step);
    const toUtc = new Date(fromUtc.getTime() + stepMs);
    if (held && open) spans[spans.length - 1] = { fromUtc: (spans.at(-1) as TimeSpan).fromUtc, toUtc };
    else if (held) spans.push({ fromUtc, toUtc });
    open = held;
  }
  return spans;
}

/** How long spans last together, hours. */
export function hoursOf(spans: readonly TimeSpan[]): number {
  return spans.reduce((sum, { fromUtc, toUtc }) => sum + (toUtc.getTime() - fromUtc.getTime()) / 3_600_000, 0);
}

/** "10:20 to 18:40 and 19:00 to 19:30"; empty where there is none. */
export function spansText(spans: readonly TimeSpan[], clockTime: (utc: Date) => string): string {
  const parts = spans.map(({ fromUtc, toUtc }) => {
    const to = clockTime(toUtc);
    // A day that ends at midnight ends at 24:00, or it would read as if it had never begun.
    return `${clockTime(fromUtc)} to ${to === '00:00' ? '24:00' : to}`;
  });
  return parts.length < 2 ? parts.join('') : `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)}`;
}
