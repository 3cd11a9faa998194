import { describe, expect, it } from 'vitest';
import { Abandoned } from '../../../server/compute/failures.ts';
import { makePlaces } from '../../../server/compute/places.ts';

const patient = new AbortController().signal;

describe('places', () => {
  it('are given in the order of asking and never more than there are', async () => {
    const places = makePlaces({ places: 2, room: 3 });
    const order: number[] = [];
    let inside = 0;
    const stay = async (who: number) => {
      expect(await places.take(patient)).toBe(true);
      order.push(who);
      inside += 1;
      expect(inside).toBeLessThanOrEqual(2);
      await new Promise((resolve) => setImmediate(resolve));
      inside -= 1;
      places.giveBack();
    };
    await Promise.all([0, 1, 2, 3, 4].map(stay));
    expect(order).toEqual([0, 1, 2, 3, 4]);
    expect([places.taken, places.waiting]).toEqual([0, 0]);
  });

  it('refuse at once when there is no room to wait', async () => {
    const places = makePlaces({ places: 1, room: 0 });
    expect(await places.take(patient)).toBe(true);
    expect(await places.take(patient)).toBe(false);
    places.giveBack();
    expect(await places.take(patient)).toBe(true);
  });

  it('are not kept for those who went away', async () => {
    const places = makePlaces({ places: 1, room: 2 });
    await places.take(patient);
    const impatient = new AbortController();
    const first = places.take(impatient.signal);
    const second = places.take(patient);
    impatient.abort();
    await expect(first).rejects.toThrow(Abandoned);
    expect(places.waiting).toBe(1);
    places.giveBack();
    expect(await second).toBe(true);
    await expect(places.take(AbortSignal.abort())).rejects.toThrow(Abandoned);
    places.giveBack();
    expect([places.taken, places.waiting]).toEqual([0, 0]);
  });
});
