/** The cookie that stands for a token in a browser, so that downloads and event streams carry it, too. */
import type { CookieOptions, Request, Response } from 'express';

const COOKIE = 'shadeside-token';

/** How long a browser stays signed in, days; revoking the token ends it at once. */
const DAYS = 90;

/** The token that a request carries, or none. */
export function tokenOf(request: Request): string | undefined {
  const bearer = /^Bearer +(\S+)$/i.exec(request.get('authorization') ?? '')?.[1];
  return bearer ?? new RegExp(`(?:^|;\\s*)${COOKIE}=([^;\\s]+)`).exec(request.get('cookie') ?? '')?.[1];
}

/** Scripts do not see it, other sites do not send it, and over https it goes over nothing else. */
function options(https: boolean): CookieOptions {
  return { httpOnly: true, sameSite: 'strict', secure: https, path: '/' };
}

export function startSession(response: Response, token: string, https: boolean): void {
  response.cookie(COOKIE, token, { ...options(https), maxAge: DAYS * 86_400_000 });
}

export function endSession(response: Response, https: boolean): void {
  response.clearCookie(COOKIE, options(https));
}
