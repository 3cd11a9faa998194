import { join } from 'node:path';
import express, { type RequestHandler } from 'express';

/** Serves the built page. Files under assets/ carry a hash of their content in the name and never change. */
export function page(webDir: string): RequestHandler {
  const assets = join(webDir, 'assets');
  return express.static(webDir, {
    setHeaders: (response, path) => {
      const unchanging = path.startsWith(assets);
      response.setHeader('Cache-Control', unchanging ? 'public, max-age=31536000, immutable' : 'no-cache');
    },
  });
}
