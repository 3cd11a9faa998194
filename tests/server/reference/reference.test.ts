/** The reference tells the routes that there are: all of them, and no others. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import request from 'supertest';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { createApp } from '../../../server/app.ts';
import { openStore, type Store } from '../../../server/data/store.ts';
import { ROUTES, routeLabel } from '../../../server/reference/routes.ts';
import { openScreenings, type Screenings } from '../../../server/screenings/jobs.ts';

const folder = mkdtempSync(join(tmpdir(), 'shadeside-reference-'));
let store: Store;
let screenings: Screenings;
let app: ReturnType<typeof createApp>;
beforeAll(() => {
  store = openStore(folder);
  screenings = openScreenings(store, { mostTableBytes: 1e6, workers: 1 });
  app = createApp({ webDir: 'none', store, screenings });
});
afterAll(async () => {
  await screenings.stop();
  store.close();
  rmSync(folder, { recursive: true, force: true });
});

interface Layer {
  readonly route?: { readonly path: string; readonly methods: Readonly<Record<string, boolean>> };
  readonly handle: { readonly stack?: Layer[] };
  /** What a router was mounted at. */
  readonly rawPath: unknown;
}

/** The routes that express has, as "GET /api/health". */
function routesOf(stack: readonly Layer[], prefix = ''): string[] {
  return stack.flatMap((layer) => {
    if (layer.route) {
      const { path, methods } = layer.route;
      const full = `${prefix}${withoutSlash(path)}`;
      return Object.keys(methods)
        .filter((method) => method !== '_all')
        .map((method) => `${method.toUpperCase()} ${full}`);
    }
    const { rawPath, handle } = layer;
    const inner = handle.stack;
    if (inner === undefined) return [];
    if (typeof rawPath !== 'string') throw new Error(`a router below "${prefix}" is at an unknown place`);
    return routesOf(inner, `${prefix}${withoutSlash(rawPath)}`);
  });
}

const withoutSlash = (path: string) => (path === '/' ? '' : path);

describe('the table of routes', () => {
  it('is what express has, route by route', () => {
    const { stack } = app.router as unknown as { stack: Layer[] };
    const there = routesOf(stack);
    expect(there.length).toBeGreaterThan(20);
    expect([...new Set(there)].sort()).toEqual(ROUTES.map(({ method, path }) => `${method} ${path}`).sort());
  });

  it('gives every address a label of its own and no more', () => {
    expect(routeLabel('/api/sites/abc/revisions/7/')).toBe('/api/sites/:id/revisions/:revision');
    expect(routeLabel('/API/Tables/fields')).toBe('/api/tables/fields');
    expect([routeLabel('/api/sites/a/b'), routeLabel('/api'), routeLabel('/apis'), routeLabel('/')]).toEqual([
      'other',
      'other',
      'page',
      'page',
    ]);
  });
});

describe('GET /api/openapi.json', () => {
  it('is OpenAPI 3.1 whose references lead somewhere', async () => {
    const { body } = await request(app).get('/api/openapi.json').expect(200);
    expect(body.openapi).toBe('3.1.0');
    const operations = Object.values(body.paths as Record<string, object>).flatMap((path) => Object.values(path));
    expect(operations).toHaveLength(ROUTES.length);
    for (const [path, methods] of Object.entries(
      body.paths as Record<string, Record<string, { parameters: { name: string; in: string }[] }>>,
    )) {
      const named = [...path.matchAll(/\{(\w+)\}/g)].map(([, name]) => name);
      for (const { parameters } of Object.values(methods)) {
        expect(parameters.filter((one) => one.in === 'path').map(({ name }) => name)).toEqual(named);
      }
    }
    const references = [...JSON.stringify(body).matchAll(/"\$ref":"(#[^"]+)"/g)].map(([, pointer = '']) => pointer);
    expect(references.filter((pointer) => pointer.startsWith('#/components/')).length).toBeGreaterThan(ROUTES.length);
    for (const pointer of new Set(references)) {
      const found = pointer
        .slice(2)
        .split('/')
        .reduce<unknown>((at, key) => (at as Record<string, unknown>)?.[key], body);
      expect(found, pointer).toBeTypeOf('object');
    }
  });

  it('has the schemas that the routes check with', async () => {
    const { body } = await request(app).get('/api/openapi.json');
    const advice = body.paths['/api/advice'].post.requestBody.content['application/json'].schema;
    expect(advice.additionalProperties).toBe(false);
    expect(advice.properties.samples).toMatchObject({ type: 'integer', minimum: 1, maximum: 1000 });
    expect(advice.properties.site).toMatchObject({ $ref: '#/components/schemas/Site' });
    expect(body.components.schemas.Site.properties.walls.type).toBe('array');
    const rows = body.paths['/api/screenings/{id}/rows'].get.parameters;
    expect(rows.map(({ name }: { name: string }) => name)).toContain('maxMarginK');
  });
});

describe('GET /api/docs', () => {
  it('tells every route without script and style in it', async () => {
    const page = await request(app).get('/api/docs').expect(200);
    expect(page.headers['content-type']).toBe('text/html; charset=utf-8');
    for (const { method, path } of ROUTES)
      expect(page.text).toContain(`${method} ${path.replaceAll(/:(\w+)/g, '{$1}')}<`);
    expect(page.text).not.toMatch(/<script|<style|style=|onclick/);
    const ids = [...page.text.matchAll(/ id="([^"]+)"/g)].map(([, id]) => id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const [, target] of page.text.matchAll(/href="#([^"]+)"/g)) expect(ids).toContain(target);
    const style = await request(app).get('/api/docs.css').expect(200);
    expect(style.headers['content-type']).toMatch(/^text\/css/);
  });
});
