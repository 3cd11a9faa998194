/** What of the results a table shows: order, filter, page. */
import type { UnitSystem } from '../../model/index.ts';
import { typedValue } from '../site/quantity-text.ts';

export const SORTS = ['row', 'margin', 'peak', 'bestWall', 'kit'] as const;

export type Sort = (typeof SORTS)[number];

export interface RowsView {
  readonly sort: Sort;
  readonly order: 'asc' | 'desc';
  /** Name of a kit class; empty for all. */
  readonly kit: string;
  /** Margin as typed, in the displayed unit. */
  readonly below: string;
  readonly text: string;
  readonly page: number;
}

export const PAGE_ROWS = 50;

/** Worst first: whoever plans starts there. */
export const FIRST_VIEW: RowsView = { sort: 'margin', order: 'asc', kit: '', below: '', text: '', page: 0 };

/** The margin that rows are to stay below, K; null for no such filter, undefined where what was typed is no number. */
export function belowK(text: string, units: UnitSystem): number | null | undefined {
  const value = typedValue(text.replace('−', '-'), 'temperatureDifference', units);
  if (value === undefined) return null;
  return typeof value === 'number' ? value : undefined;
}

/** The query of a view. A margin that is no number filters nothing. */
export function rowsQuery({ sort, order, kit, below, text, page }: RowsView, units: UnitSystem): string {
  const margin = belowK(below, units);
  const query = new URLSearchParams({ sort, order });
  if (kit !== '') query.set('kit', kit);
  if (typeof margin === 'number') query.set('maxMarginK', String(margin));
  if (text.trim() !== '') query.set('text', text.trim());
  query.set('offset', String(page * PAGE_ROWS));
  query.set('limit', String(PAGE_ROWS));
  return query.toString();
}

/** The view after a press on the head of a column: its order turns round, or it takes over, from the first page on. */
export function sortedBy(view: RowsView, sort: Sort): RowsView {
  const order = view.sort === sort && view.order === 'asc' ? 'desc' : 'asc';
  return { ...view, sort, order, page: 0 };
}

export const pageCount = (total: number): number => Math.max(1, Math.ceil(total / PAGE_ROWS));
