import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import express from 'express';
import { expect, test } from 'vitest';
import { ListenError, listenOnFirst } from '../../server/listen.ts';

const host = '127.0.0.1';

async function withBusyPort(work: (port: number) => Promise<void>): Promise<void> {
  const other = createServer();
  await new Promise<void>((resolve) => other.listen(0, host, resolve));
  try {
    await work((other.address() as AddressInfo).port);
  } finally {
    await new Promise((resolve) => other.close(resolve));
  }
}

test('the address names the port that was given, and stopping frees it', async () => {
  const app = express().get('/', (_request, response) => {
    response.send('here');
  });
  const listening = await listenOnFirst(app, { host, ports: [0] });
  expect(listening.url).toMatch(/^http:\/\/127\.0\.0\.1:[1-9]\d*\/$/);
  expect(await (await fetch(listening.url)).text()).toBe('here');
  await listening.stop();
  await expect(fetch(listening.url)).rejects.toThrow();
});

test('an answer on its way is finished before the server stops', async () => {
  let asked = () => {};
  const arrived = new Promise<void>((resolve) => {
    asked = resolve;
  });
  const app = express().get('/', (_request, response) => {
    asked();
    setTimeout(() => response.send('late'), 200);
  });
  const listening = await listenOnFirst(app, { host, ports: [0] });
  const answer = fetch(listening.url).then((response) => response.text());
  await arrived;
  await listening.stop();
  expect(await answer).toBe('late');
});

test('a busy port is told with the way out', async () => {
  await withBusyPort(async (port) => {
    const listening = listenOnFirst(express(), { host, ports: [port] });
    await expect(listening).rejects.toThrow(ListenError);
    await expect(listening).rejects.toThrow(
      `Port ${port} is in use by another program; choose another one with --port N.`,
    );
  });
});

test('the next port is taken when the first is busy', async () => {
  await withBusyPort(async (port) => {
    const listening = await listenOnFirst(express(), { host, ports: [port, 0] });
    expect(listening.url).not.toContain(`:${port}/`);
    await listening.stop();
  });
});

test('an address of another machine is told', async () => {
  await expect(listenOnFirst(express(), { host: '192.0.2.1', ports: [0] })).rejects.toThrow(
    'is no address of this machine',
  );
});
