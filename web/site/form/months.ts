/** The months of a year as choices. */
export const MONTHS = Array.from({ length: 12 }, (_, month) => ({
  value: String(month + 1),
  label: new Intl.DateTimeFormat('en', { month: 'long', timeZone: 'UTC' }).format(new Date(Date.UTC(2000, month, 15))),
}));
