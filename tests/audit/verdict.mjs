const LEVELS = ['critical', 'high', 'moderate', 'low', 'info'];
const SERIOUS = ['critical', 'high'];

/**
 * What the answer of `npm audit --json` means. The words of a failed request are not passed on: they name addresses of the machine's
 * set-up.
 * @param {string} json
 * @returns {{ lines: string[], failed: boolean }}
 */
export function verdictOf(json) {
  const counts = parsed(json)?.metadata?.vulnerabilities;
  if (typeof counts !== 'object' || counts === null) {
    return {
      lines: ['The registry could not be asked for known weaknesses; nothing is known about them.'],
      failed: false,
    };
  }
  const { vulnerabilities = {} } = parsed(json);
  const serious = Object.values(vulnerabilities).filter(({ severity }) => SERIOUS.includes(severity));
  return {
    lines: [
      `Known weaknesses: ${LEVELS.map((level) => `${level} ${Number(counts[level] ?? 0)}`).join(', ')}`,
      ...serious.map(({ name, severity, range }) => `${severity}: ${name} ${range}`),
    ],
    failed: SERIOUS.some((level) => Number(counts[level] ?? 0) > 0),
  };
}

/** @param {string} json */
function parsed(json) {
  try {
    return JSON.parse(json);
  } catch {
    return undefined;
  }
}
