import { expect, test } from 'vitest';
import { comparisonRows, comparisonWords, slowestAgeing } from '../../../web/site/year/wall-comparison.ts';
import { siteWith } from '../../model/sites.ts';
import { inventedYear } from './years.ts';

const years = [
  inventedYear({ wall: 'west', ageingAgainst40C: 1.5, hoursOverLimit: 214, coldHours: 3 }),
  inventedYear({ wall: 'north', ageingAgainst40C: 1, ageingFactor: null }),
];

test('ageing is told against the wall where it is slowest', () => {
  expect(slowestAgeing(years)?.wall).toBe('north');
  const rows = comparisonRows(years, siteWith(), 'metric');
  const cells = (name: RegExp) => rows.find((row) => name.test(row.name))?.cells;
  expect(cells(/against the wall where it is slowest/)).toEqual(['1.50 times', '1.00 times']);
  expect(cells(/against full shade/)).toEqual(['2.00 times', '–']);
  expect(cells(/^Over the limit/)).toEqual(['214 h', '0 h']);
  expect(cells(/^Below the lower limit/)).toEqual(['3 h', '0 h']);
  expect(cells(/^When/)).toEqual(['5 July, 16:15', '5 July, 16:15']);
  expect(comparisonWords(years)).toBe('The electronics age the slowest on “north”, and 1.50 times as fast on “west”.');
  expect(comparisonWords(years.slice(0, 1))).toBe('');
  expect(comparisonWords([])).toBe('');
});

test('only faces that the sun can reach are told, those under a hood as such', () => {
  const names = (site: ReturnType<typeof siteWith>) =>
    comparisonRows(years, site, 'us')
      .filter(({ name }) => name.startsWith('Sun on'))
      .map(({ name, cells }) => `${name}: ${cells[0]}`);
  expect(names(siteWith())).toHaveLength(5);
  const onPost = siteWith({ box: { mount: 'post', hood: { faces: ['top'] } } });
  expect(names(onPost)).toContain('Sun on the back: 1000 kWh/m²');
  expect(names(onPost)).toContain('Sun on the top: under the hood');
});
