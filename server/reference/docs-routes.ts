import express, { type Router } from 'express';
import { onlyMethods } from '../errors.ts';
import { DOCS_STYLE, docsPage } from './docs-page.ts';
import { openApiDocument } from './openapi.ts';

/** The reference of the API, for people and for programs. */
export function docsRoutes(): Router {
  const router = express.Router();
  const get = (path: string, type: string, text: () => string) => {
    // It does not change while the program runs.
    let made: string | undefined;
    router
      .route(path)
      .get((_request, response) => {
        made ??= text();
        response.type(type).send(made);
      })
      .all(onlyMethods('GET, HEAD'));
  };
  get('/docs', 'html', docsPage);
  get('/docs.css', 'css', () => DOCS_STYLE);
  get('/openapi.json', 'json', () => JSON.stringify(openApiDocument()));
  return router;
}
