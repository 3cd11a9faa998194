/** What the table of routes says of one. */
import type { z } from 'zod';

export type Method = 'GET' | 'POST' | 'PUT' | 'PATCH' | 'DELETE';

export interface Route {
  readonly method: Method;
  /** As express writes it: "/api/sites/:id". */
  readonly path: string;
  readonly summary: string;
  readonly body?: z.ZodType;
  /** Content type of the body where it is no JSON. */
  readonly bodyType?: string;
  /** What may stand behind the question mark: the schema that reads it, or words where the route reads it by hand. */
  readonly query?: z.ZodObject | Readonly<Record<string, string>>;
  /** What a good answer holds. */
  readonly answer: string;
  /** Status of a good answer; 200 where nothing is said. */
  readonly status?: number;
  /** Content type of the answer; JSON where nothing is said. */
  readonly answerType?: string;
  /** Whether it is answered without a token, wherever the server listens. */
  readonly open?: boolean;
}
