/** The reference as a page of plain HTML: no script, and its style in a file of its own. */
import packageFile from '../../package.json';
import { openApiPath, queryParameters, schemaOf } from './openapi.ts';
import type { Route } from './route.ts';
import { ROUTES } from './routes.ts';

export function docsPage(): string {
  const contents = ROUTES.map(
    (route) =>
      `<li><a href="#${idOf(route)}"><code>${route.method} ${escaped(openApiPath(route.path))}</code></a></li>`,
  );
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Shadeside: reference of the API</title>
<link rel="stylesheet" href="docs.css">
</head>
<body>
<header>
<h1>Shadeside: reference of the API</h1>
<p>Version ${escaped(packageFile.version)}. The same for programs: <a href="openapi.json">openapi.json</a>; the schema of a
site: <a href="schema">schema</a>; <a href="../">the page</a>.</p>
<p>Bodies and answers are JSON where nothing else is said. Numbers are SI, temperatures degrees Celsius, instants ISO 8601 in UTC;
numbers of a site may be text with a unit. A failure is answered with its status and
<code>{ "error", "problems": [{ "path", "found", "wrong", "allowed", "message" }] }</code>: every problem at once. 503 comes with
<code>Retry-After</code>.</p>
<p>Where the server listens for others than its own machine, a token is needed: <code>Authorization: Bearer TOKEN</code>, or the
cookie that <code>POST /api/session</code> sets.</p>
</header>
<nav aria-label="Routes"><ul>
${contents.join('\n')}
</ul></nav>
<main>
${ROUTES.map(section).join('\n')}
</main>
</body>
</html>
`;
}

function section(route: Route): string {
  const { method, path, summary, body, bodyType, query, answer, answerType, status = 200, open } = route;
  const id = idOf(route);
  const parameters = queryParameters(query).map(
    ({ name, description, schema }) =>
      `<li><code>${escaped(String(name))}</code>: ${escaped(String(description ?? JSON.stringify(schema)))}</li>`,
  );
  return `<section id="${id}" aria-labelledby="${id}-title">
<h2 id="${id}-title"><code>${method} ${escaped(openApiPath(path))}</code></h2>
<p>${escaped(summary)}.${open ? ' Needs no token.' : ''}</p>
${parameters.length > 0 ? `<p>Behind the question mark:</p>\n<ul>\n${parameters.join('\n')}\n</ul>` : ''}
${bodyType ? `<p>Body: <code>${escaped(bodyType)}</code></p>` : ''}
${body ? `<p>Body, as JSON Schema:</p>\n<pre tabindex="0">${escaped(JSON.stringify(schemaOf(body), null, 2))}</pre>` : ''}
<p>Answer, status ${status}${answerType ? `, <code>${escaped(answerType)}</code>` : ''}: ${escaped(answer)}.</p>
</section>`;
}

function idOf({ method, path }: Route): string {
  return `${method}${path.replaceAll(/[^a-z]+/gi, '-')}`.toLowerCase();
}

function escaped(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');
}

/** Black on white at 7:1 or more, targets of 44 px, and nothing wider than a small phone. */
export const DOCS_STYLE = `:root { color-scheme: light; }
body { max-width: 60rem; margin: 0 auto; padding: 16px; background: #fff; color: #000; font: 1.0625rem/1.45 system-ui, sans-serif; overflow-wrap: anywhere; }
h1 { font-size: 1.6rem; }
h2 { margin: 2rem 0 0.5rem; padding-top: 0.5rem; border-top: 2px solid #000; font-size: 1.2rem; }
a { color: #00388a; }
a:focus-visible, pre:focus-visible { outline: 3px solid #b0005e; outline-offset: 2px; }
nav ul { padding: 0; list-style: none; }
nav a { display: inline-block; min-height: 44px; padding: 10px 0; }
pre { max-height: 30rem; overflow: auto; padding: 12px; border: 1px solid #000; background: #f2f2ee; font-size: 0.9rem; white-space: pre-wrap; }
`;
