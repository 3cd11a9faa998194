/** The golden section: points at its multiples lie evenly on a line however many there are. */
export const GOLDEN = (Math.sqrt(5) - 1) / 2;
