/** Serves the built page as the real server does, on a free port, and notes which files are fetched. */
import { readFileSync } from 'node:fs';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import express from 'express';
import { type AppOptions, createApp } from '../../server/app.ts';

const WEB_DIR = fileURLToPath(new URL('../../.build/web', import.meta.url));
const SERVICE_WORKER = '/service-worker.js';

const built = (path: string) => readFileSync(join(WEB_DIR, path));

export interface PageServer {
  readonly address: string;
  /** Paths fetched since the last call of `forget`. */
  fetched(): string[];
  forget(): void;
  /** The bytes of a built file, by the path it is fetched at. */
  file(path: string): Buffer;
  /** Serves the service worker of a newer build from now on, as after an update of the server. */
  update(): void;
  close(): Promise<void>;
}

/** `options` say what the server has beside the page; left out, it keeps nothing. */
export async function servePage(options: Omit<AppOptions, 'webDir'> = {}): Promise<PageServer> {
  let paths: string[] = [];
  const app = express();
  app.use((request, _response, next) => {
    paths.push(request.path);
    next();
  });
  let updated = false;
  app.get(SERVICE_WORKER, (_request, response, next) => {
    if (!updated) return next();
    const newer = built(SERVICE_WORKER)
      .toString()
      .replace(/(?<=BUILD_VERSION=")[^"]+/, 'newer');
    response.type('text/javascript').send(newer);
  });
  app.use(createApp({ ...options, webDir: WEB_DIR }));
  const server = app.listen(0, '127.0.0.1');
  await new Promise<void>((resolve, reject) => {
    server.once('listening', resolve);
    server.once('error', reject);
  });
  return {
    address: `http://127.0.0.1:${(server.address() as AddressInfo).port}/`,
    fetched: () => [...new Set(paths)],
    forget: () => {
      paths = [];
    },
    file: built,
    update: () => {
      updated = true;
    },
    close: () => new Promise((resolve) => server.close(() => resolve())),
  };
}
