/** Date and time as the device writes them. */
export function when(iso: string): string {
  const date = new Date(iso);
  if (Number.isNaN(date.getTime())) return 'at an unknown time';
  return new Intl.DateTimeFormat(undefined, { dateStyle: 'medium', timeStyle: 'short' }).format(date);
}

/** The time of day alone. */
export function clock(at: Date): string {
  return new Intl.DateTimeFormat(undefined, { timeStyle: 'short' }).format(at);
}
