import { describe, expect, test } from 'vitest';
import { type Draft, listAt, textAt, valueAt, withoutEntry, withValue } from '../../web/site/draft.ts';

const draft: Draft = {
  title: 'yard',
  box: { powerW: 14 },
  walls: [{ name: 'north' }, { name: 'east', eave: { depthM: 1 } }],
  assumed: ['box.powerW', 'walls.1.eave.depthM', 'box.massKg'],
};

describe('reading', () => {
  test('follows a path through objects and lists', () => {
    expect(valueAt(draft, 'walls.1.eave.depthM')).toBe(1);
    expect(textAt(draft, 'walls.0.name')).toBe('north');
    expect(listAt(draft, 'walls')).toHaveLength(2);
  });

  test.each(['walls.7.name', 'box.powerW.x', 'nothing.at.all', 'constructor', 'walls.length.x'])(
    '%s is nothing',
    (path) => {
      expect(valueAt(draft, path)).toBeUndefined();
      expect(textAt(draft, path)).toBe('');
      expect(listAt(draft, path)).toEqual([]);
    },
  );
});

describe('changing', () => {
  test('leaves the former draft and everything beside the path alone', () => {
    const changed = withValue(draft, 'walls.0.azimuthDeg', 8);
    expect(valueAt(changed, 'walls.0')).toEqual({ name: 'north', azimuthDeg: 8 });
    expect(valueAt(draft, 'walls.0')).toEqual({ name: 'north' });
    expect(valueAt(changed, 'walls.1')).toBe(valueAt(draft, 'walls.1'));
  });

  test('at the empty path stands the whole draft', () => {
    expect(valueAt(draft, '')).toBe(draft);
    expect(withValue(draft, '', { title: 'field' })).toEqual({ title: 'field' });
  });

  test('makes the objects and lists that a path leads through', () => {
    expect(withValue({}, 'constraints.mountHeightM.1', 2)).toEqual({ constraints: { mountHeightM: [undefined, 2] } });
    expect(withValue({ walls: 7 }, 'walls.0.name', 'a')).toEqual({ walls: [{ name: 'a' }] });
  });

  test('undefined takes a field out, and a pair with its last number', () => {
    expect(withValue({ box: { powerW: 1, massKg: 2 } }, 'box.powerW', undefined)).toEqual({ box: { massKg: 2 } });
    const pair = { constraints: { mountHeightM: [undefined, 2] } };
    expect(withValue(pair, 'constraints.mountHeightM.1', undefined)).toEqual({ constraints: {} });
  });

  test('what is entered no longer counts as assumed', () => {
    expect(withValue(draft, 'box.powerW', 20)['assumed']).toEqual(['walls.1.eave.depthM', 'box.massKg']);
    expect(withValue(draft, 'walls.1.eave', undefined)['assumed']).toEqual(['box.powerW', 'box.massKg']);
  });

  test('an entry of a list can go', () => {
    expect(listAt(withoutEntry(draft, 'walls', 0), 'walls')).toEqual([{ name: 'east', eave: { depthM: 1 } }]);
  });
});
