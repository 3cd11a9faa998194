/** The work behind the advice: it lets others have their turn, tells how far it is, and stops when nobody waits. */
import { expect, test } from 'vitest';
import { parseSite, SiteError } from '../../model/index.ts';
import { AdviceStopped, adviseOn } from '../../server/advice.ts';
import { SMALL_SITE } from './sites.ts';

const site = parseSite(SMALL_SITE);

test('others have their turn, and the shares rise', async () => {
  const shares: number[] = [];
  let turns = 0;
  let waiting = true;
  const others = (async () => {
    while (waiting) {
      await new Promise((resolve) => setImmediate(resolve));
      turns++;
    }
  })();
  await adviseOn(site, 'south', { samples: 60, onShare: (share) => shares.push(share) });
  waiting = false;
  await others;
  expect(shares.length).toBeGreaterThan(1);
  expect(shares).toEqual([...shares].sort((a, b) => a - b));
  for (const share of shares) expect(share > 0 && share <= 1).toBe(true);
  expect(turns).toBeGreaterThanOrEqual(shares.length);
});

test('it stops when nobody waits any more', async () => {
  let asked = 0;
  const stopped = () => ++asked > 1;
  await expect(adviseOn(site, 'south', { samples: 1000, stopped })).rejects.toThrow(AdviceStopped);
  expect(asked).toBe(2);
});

test('an unknown wall is found before anything long begins', async () => {
  const onShare = () => expect.unreachable();
  await expect(adviseOn(site, 'carport', { onShare })).rejects.toThrow(SiteError);
});
