import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { progressOn } from '../../../server/terminal/progress.ts';

beforeEach(() => {
  vi.useFakeTimers({ toFake: ['performance'] });
});
afterEach(() => {
  vi.useRealTimers();
});

function stream(isTTY: boolean) {
  const written: string[] = [];
  const fake = { isTTY, write: (text: string) => written.push(text) } as unknown as NodeJS.WriteStream;
  return { fake, written };
}

test('a line is written over itself once a second has passed, and taken away', () => {
  const { fake, written } = stream(true);
  const progress = progressOn(fake, 'Trying');
  progress.tell(0.1);
  expect(written).toEqual([]);
  vi.advanceTimersByTime(1500);
  progress.tell(0.5);
  progress.tell(0.501);
  progress.end();
  expect(written).toEqual(['\r\u001b[KTrying: 50 %', '\r\u001b[K']);
});

test('quick work and what is no terminal get nothing', () => {
  for (const isTTY of [true, false]) {
    const { fake, written } = stream(isTTY);
    const progress = progressOn(fake, 'Trying');
    if (!isTTY) vi.advanceTimersByTime(5000);
    progress.tell(0.5);
    progress.end();
    expect(written).toEqual([]);
  }
});
