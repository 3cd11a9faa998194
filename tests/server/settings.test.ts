import { availableParallelism } from 'node:os';
import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { BadInput } from '../../server/bad-input.ts';
import {
  DEFAULT_DATA,
  DEFAULT_HOST,
  DEFAULT_LIMIT_S,
  DEFAULT_RATE,
  DEFAULT_TABLE_MB,
  DEFAULT_WAITING,
  readServerSettings,
} from '../../server/settings.ts';

describe('the settings of the server', () => {
  it('have defaults', () => {
    expect(readServerSettings('serve', [], {})).toEqual({
      port: undefined,
      host: DEFAULT_HOST,
      dataDir: resolve(DEFAULT_DATA),
      workers: availableParallelism(),
      waiting: DEFAULT_WAITING,
      limitS: DEFAULT_LIMIT_S,
      tableMb: DEFAULT_TABLE_MB,
      proxies: 0,
      https: false,
      perMinute: DEFAULT_RATE,
      log: 'info',
    });
  });

  it('go by the option before the variable', () => {
    const environment = { SHADESIDE_PORT: '81', SHADESIDE_HOST: '0.0.0.0', SHADESIDE_DATA: '/elsewhere' };
    expect(readServerSettings('serve', ['--port', '0'], environment)).toMatchObject({
      port: 0,
      host: '0.0.0.0',
      dataDir: resolve('/elsewhere'),
    });
  });

  it('are refused all at once, each by the name of what said it', () => {
    let lines: readonly string[] = [];
    try {
      readServerSettings('serve', ['--port', '65536', '--data', ' ', '--workers', '0', '--https', 'maybe'], {
        SHADESIDE_HOST: '',
      });
    } catch (error) {
      lines = (error as BadInput).lines;
    }
    expect(lines).toEqual([
      'serve: --port 65536: allowed are whole numbers from 0 to 65535',
      'serve: SHADESIDE_HOST is empty; an address is needed',
      'serve: --data is empty; the path of a folder is needed',
      'serve: --workers 0: allowed are whole numbers from 1 to 64',
      'serve: --https maybe: allowed are yes, no',
    ]);
  });
});
