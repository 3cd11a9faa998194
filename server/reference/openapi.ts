/** The API as an OpenAPI 3.1 document, made of the table of routes and the schemas that the routes check with. */
import { z } from 'zod';
import { siteJsonSchema } from '../../model/index.ts';
import packageFile from '../../package.json';
import { site } from '../requests.ts';
import type { Route } from './route.ts';
import { ROUTES } from './routes.ts';

export type Json = { readonly [key: string]: unknown };

const SITE = { $ref: '#/components/schemas/Site' };

const ERRORS = {
  400: 'What is wrong with the request, every problem with its path',
  401: 'A token is needed',
  404: 'There is nothing here',
  429: 'Too many requests from one address; wait',
  503: 'Too many requests are waiting, or this one took too long; Retry-After says when to come again',
};

export function openApiDocument(): Json {
  const paths: Record<string, Record<string, Json>> = {};
  for (const route of ROUTES) {
    const path = openApiPath(route.path);
    paths[path] = { ...paths[path], [route.method.toLowerCase()]: operation(route) };
  }
  return {
    openapi: '3.1.0',
    info: {
      title: 'Shadeside',
      version: packageFile.version,
      description:
        'Numbers are SI, temperatures degrees Celsius, instants ISO 8601 in UTC. A site may hold text with units.',
    },
    // Relative to this document, so that a path of a proxy before it does no harm.
    servers: [{ url: '..' }],
    paths,
    components: {
      schemas: { Site: withoutDialect(siteJsonSchema() as Json), Failure: FAILURE },
      securitySchemes: { token: { type: 'http', scheme: 'bearer' } },
    },
  };
}

/** The JSON Schema of a body or query, as it comes in. */
export function schemaOf(schema: z.ZodType): Json {
  const made = z.toJSONSchema(schema, {
    io: 'input',
    override: ({ zodSchema, jsonSchema }) => {
      if (zodSchema === site) Object.assign(jsonSchema, SITE);
    },
  });
  return withoutDialect(made as Json);
}

const FAILURE: Json = {
  type: 'object',
  required: ['error', 'problems'],
  properties: {
    error: { type: 'string' },
    problems: {
      type: 'array',
      items: {
        type: 'object',
        required: ['path', 'found', 'wrong', 'allowed', 'message'],
        properties: Object.fromEntries(
          ['path', 'found', 'wrong', 'allowed', 'message'].map((name) => [name, { type: 'string' }]),
        ),
      },
    },
  },
};

function operation({ path, summary, body, bodyType, query, answer, status = 200, answerType, open }: Route): Json {
  const content = body
    ? { 'application/json': { schema: schemaOf(body) } }
    : bodyType && { [bodyType]: { schema: { type: 'string', contentEncoding: 'binary' } } };
  const statuses = Object.entries(ERRORS).filter(([code]) => !(open && code === '401'));
  return {
    summary,
    ...(open ? {} : { security: [{ token: [] }] }),
    parameters: [...pathParameters(path), ...queryParameters(query)],
    ...(content && { requestBody: { required: true, content } }),
    responses: {
      [status]: {
        description: answer,
        ...(status !== 204 && { content: { [answerType ?? 'application/json']: {} } }),
      },
      ...Object.fromEntries(
        statuses.map(([code, description]) => [
          code,
          { description, content: { 'application/json': { schema: { $ref: '#/components/schemas/Failure' } } } },
        ]),
      ),
    },
  };
}

/** "/api/sites/:id" as "/api/sites/{id}". */
export function openApiPath(path: string): string {
  return path.replaceAll(/:(\w+)/g, '{$1}');
}

function pathParameters(path: string): Json[] {
  return [...path.matchAll(/:(\w+)/g)].map(([, name]) => ({
    name,
    in: 'path',
    required: true,
    schema: { type: 'string' },
  }));
}

export function queryParameters(query: Route['query']): Json[] {
  if (query === undefined) return [];
  if (!(query instanceof z.ZodObject)) {
    return Object.entries(query).map(([name, description]) => ({
      name,
      in: 'query',
      description,
      schema: { type: 'string' },
    }));
  }
  const { properties = {}, required = [] } = schemaOf(query) as {
    properties?: Record<string, Json>;
    required?: string[];
  };
  return Object.entries(properties).map(([name, schema]) => ({
    name,
    in: 'query',
    ...(required.includes(name) && { required: true }),
    schema,
  }));
}

/** Parts of a document name no dialect of their own. */
function withoutDialect({ $schema: _, ...schema }: Json): Json {
  return schema;
}
