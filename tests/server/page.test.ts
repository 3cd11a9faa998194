/** The built page as the server hands it out. */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import request from 'supertest';
import { afterAll, expect, test } from 'vitest';
import { createApp } from '../../server/app.ts';

const folder = mkdtempSync(join(tmpdir(), 'shadeside-page-'));
const webDir = join(folder, 'web');
mkdirSync(join(webDir, 'assets'), { recursive: true });
writeFileSync(join(webDir, 'index.html'), '<!doctype html><title>page</title>');
writeFileSync(join(webDir, 'assets/main-1234.js'), 'export {};');
writeFileSync(join(webDir, 'service-worker.js'), '');
writeFileSync(join(webDir, 'manifest.webmanifest'), '{}');
writeFileSync(join(webDir, '.hidden'), 'hidden');
writeFileSync(join(folder, 'outside.txt'), 'outside');
afterAll(() => rmSync(folder, { recursive: true }));

const app = createApp({ webDir });

test('the page is asked for anew each time, its hashed files never again', async () => {
  const page = await request(app).get('/');
  expect(page.text).toContain('<title>page</title>');
  expect(page.headers['cache-control']).toBe('no-cache');
  const script = await request(app).get('/assets/main-1234.js');
  expect(script.headers['content-type']).toMatch(/javascript/);
  expect(script.headers['cache-control']).toContain('immutable');
});

test('the service worker is asked for anew each time, and the manifest is one', async () => {
  const worker = await request(app).get('/service-worker.js');
  expect(worker.headers['cache-control']).toBe('no-cache');
  const manifest = await request(app).get('/manifest.webmanifest');
  expect(manifest.headers['content-type']).toContain('application/manifest+json');
  expect(manifest.headers['content-security-policy']).toMatch(/worker-src 'self'; ?manifest-src 'self'/);
});

test.each([
  '/nowhere',
  '/.hidden',
  '/../outside.txt',
  '/%2e%2e/outside.txt',
  '/..%2foutside.txt',
  '/assets/none.js',
  '/%E0%A4%A',
])('GET %s finds nothing', async (path) => {
  const response = await request(app).get(path);
  expect([403, 404]).toContain(response.status);
  expect(response.text).not.toMatch(/hidden$|outside$/);
  expect(response.headers['content-type']).toMatch(/^text\/plain/);
});
