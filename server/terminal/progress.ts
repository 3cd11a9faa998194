/** A line that tells how far long work has come, for a person at a terminal only. */
export interface Progress {
  /** @param beside what stands after the share, such as the time that is left */
  tell(share: number, beside?: string): void;
  /** Takes the line away. */
  end(): void;
}

/** Work that is done sooner shows nothing, ms. */
const PATIENCE_MS = 1000;

const CLEAR_LINE = '\r\u001b[K';

export function progressOn(stream: NodeJS.WriteStream, what: string): Progress {
  const began = performance.now();
  let shown = '';
  return {
    tell(share, beside) {
      if (!stream.isTTY || performance.now() - began < PATIENCE_MS) return;
      const line = `${what}: ${Math.round(share * 100)} %${beside === undefined ? '' : ` ${bar(share)} ${beside}`}`;
      if (line !== shown) stream.write(`${CLEAR_LINE}${line}`);
      shown = line;
    },
    end() {
      if (shown !== '') stream.write(CLEAR_LINE);
      shown = '';
    },
  };
}

const BAR_WIDTH = 20;

function bar(share: number): string {
  const full = Math.round(BAR_WIDTH * Math.min(1, Math.max(0, share)));
  return `[${'#'.repeat(full)}${'.'.repeat(BAR_WIDTH - full)}]`;
}
