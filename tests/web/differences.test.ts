import { expect, test } from 'vitest';
import { differenceSubject, differences, sideWords } from '../../web/sites/differences.ts';
import { newId } from '../../web/sites/new-id.ts';
import { deletedSite, mayOverwrite, sameDraft, savedFrom } from '../../web/sites/saved-site.ts';
import { copyFrom } from '../../web/sites/working-copies.ts';

const mine = {
  title: 'yard',
  box: { powerW: 14, vents: null },
  walls: [{ name: 'north', azimuthDeg: 0 }],
  assumed: ['a'],
};
const theirs = {
  box: { powerW: 20, vents: null },
  title: 'yard',
  walls: [{ name: 'north', azimuthDeg: 0 }, { name: 'west' }],
};

test('differences are found field by field, what follows from others is left out', () => {
  const found = differences(mine, theirs);
  expect(found.map(({ path }) => path)).toEqual(['box.powerW', 'walls.1']);
  expect(found.map((row) => differenceSubject(row, mine, theirs))[1]).toBe('wall west');
  expect(sideWords(14, 'box.powerW', 'metric')).toBe('14\u00a0W');
  expect(sideWords(undefined, 'walls.1', 'metric')).toBe('nothing');
  expect(differences(mine, { ...mine })).toEqual([]);
});

test('the order of fields does not matter, that of lists does', () => {
  expect(sameDraft({ a: 1, b: { c: 2, d: 3 } }, { b: { d: 3, c: 2 }, a: 1 })).toBe(true);
  expect(sameDraft([1, 2], [2, 1])).toBe(false);
});

test('a copy overwrites only the state that it was made from', () => {
  const copy = { id: newId(), draft: mine, base: null, changed: true, editedAt: '' };
  const first = savedFrom(undefined, copy, '', new Date(0));
  expect(mayOverwrite(undefined, copy)).toBe(true);
  const stale = { ...copy, base: first.edition, draft: theirs };
  expect(mayOverwrite(first, stale)).toBe(true);
  const second = savedFrom(first, { ...copy, draft: { title: 'other' } }, '', new Date(1));
  expect(mayOverwrite(second, stale)).toBe(false);
  expect(deletedSite(second, new Date(2))).toBeNull();
});

test('ids are version 4 UUIDs; what is no copy is not read', () => {
  expect(newId()).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-4[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
  for (const text of [null, '', '[]', '{"id":1}', '{"id":"a","draft":[]}']) expect(copyFrom(text)).toBeNull();
});
