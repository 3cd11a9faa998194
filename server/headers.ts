import type { RequestHandler } from 'express';
import helmet from 'helmet';

/** The page takes everything from here: no foreign script, style, image or connection, and no frame around it. */
const FROM_HERE = {
  'default-src': ["'self'"],
  'script-src': ["'self'"],
  'img-src': ["'self'", 'data:'],
  'connect-src': ["'self'"],
  'worker-src': ["'self'"],
  'manifest-src': ["'self'"],
  'object-src': ["'none'"],
  'base-uri': ["'none'"],
  'form-action': ["'self'"],
  'frame-ancestors': ["'none'"],
};

/**
 * Headers of every answer. Transport security and the upgrade to https only where people come by https: a phone in the local network
 * reaches the page by plain http, and would never again once it was told so.
 */
export function securityHeaders({ https }: { https: boolean }): RequestHandler {
  return helmet({
    contentSecurityPolicy: {
      useDefaults: false,
      directives: https ? { ...FROM_HERE, 'upgrade-insecure-requests': [] } : FROM_HERE,
    },
    strictTransportSecurity: https,
    xFrameOptions: { action: 'deny' },
    referrerPolicy: { policy: 'no-referrer' },
  });
}
