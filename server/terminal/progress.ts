/** A line that tells how far long work has come, for a person at a terminal only. */
export interface Progress {
  tell(share: number): void;
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
    tell(share) {
      if (!stream.isTTY || performance.now() - began < PATIENCE_MS) return;
      const line = `${what}: ${Math.round(share * 100)} %`;
      if (line !== shown) stream.write(`${CLEAR_LINE}${line}`);
      shown = line;
    },
    end() {
      if (shown !== '') stream.write(CLEAR_LINE);
      shown = '';
    },
  };
}
