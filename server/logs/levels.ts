import type { Logger } from 'pino';

/** Apart from the log itself: commands that keep none need not load it. */
export const LOG_LEVELS = ['silent', 'error', 'warn', 'info', 'debug'] as const;
export type LogLevel = (typeof LOG_LEVELS)[number];
export type Log = Logger;
