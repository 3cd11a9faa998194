import { expect, test } from 'vitest';
import { LEDGER_PATHS, type Ledger } from '../../../model/index.ts';
import { ledgerWords } from '../../../server/report/ledger-words.ts';

const nothing = Object.fromEntries(LEDGER_PATHS.map((path) => [path, 0])) as Ledger;

test('flows are told by direction, largest first, the smallest left out', () => {
  const ledger = { ...nothing, dissipation: 15, sunBeam: 40, convection: -44.2, longwaveSky: -10.76, mounting: -0.04 };
  expect(ledgerWords(ledger, 'metric')).toBe(
    'Heat comes in: 40.0 W from direct sun, 15.0 W from the electronics. ' +
      'Heat goes out: 44.2 W to the air outside, 10.8 W to the sky by radiation.',
  );
});

test('a box without any flow has none', () => {
  expect(ledgerWords(nothing, 'us')).toBe('Heat comes in: none. Heat goes out: none.');
});
