import { describe, expect, test } from 'vitest';
import { belowK, FIRST_VIEW, PAGE_ROWS, pageCount, rowsQuery, sortedBy } from '../../../web/area/rows-query.ts';

const query = (change: Partial<typeof FIRST_VIEW>, units: 'metric' | 'us' = 'metric') =>
  Object.fromEntries(new URLSearchParams(rowsQuery({ ...FIRST_VIEW, ...change }, units)));

describe('the query', () => {
  test('asks for the worst first and leaves out empty filters', () => {
    expect(query({ text: '  ' })).toEqual({ sort: 'margin', order: 'asc', offset: '0', limit: String(PAGE_ROWS) });
  });

  test('carries text as it is, and pages', () => {
    expect(query({ text: 'a&b=ü #1', kit: 'two remedies', page: 3 })).toMatchObject({
      text: 'a&b=ü #1',
      kit: 'two remedies',
      offset: '150',
    });
  });

  test('turns the margin into K; what is no number filters nothing', () => {
    expect(query({ below: '−2,5' })).toMatchObject({ maxMarginK: '-2.5' });
    expect(query({ below: '9' }, 'us')).toMatchObject({ maxMarginK: '5' });
    expect(query({ below: 'much' })).not.toHaveProperty('maxMarginK');
    expect(belowK('much', 'metric')).toBeUndefined();
    expect(belowK('', 'metric')).toBeNull();
  });
});

test('a head turns the order round, another one begins anew on the first page', () => {
  const turned = sortedBy({ ...FIRST_VIEW, page: 4 }, 'margin');
  expect(turned).toMatchObject({ sort: 'margin', order: 'desc', page: 0 });
  expect(sortedBy(turned, 'margin').order).toBe('asc');
  expect(sortedBy(turned, 'kit')).toMatchObject({ sort: 'kit', order: 'asc' });
});

test.each([
  [0, 1],
  [50, 1],
  [51, 2],
])('%i rows make %i pages', (total, pages) => expect(pageCount(total)).toBe(pages));
