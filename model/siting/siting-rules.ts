/**
 * The thresholds of the siting checks. They stand in one data file, `siting-rules.json`, that a company can replace with
 * its own of the same shape; which checks are hard, so that a wall that fails one is no answer, stands there, too.
 */
import { z } from 'zod';
import { type Problem, problem, SiteError, shown } from '../site-error.ts';
import usual from './siting-rules.json';

/** Longest text of a rule. */
const MAX_TEXT = 300;

const text = z.string().trim().min(1).max(MAX_TEXT);
const number = (most: number) => z.number().min(0).max(most);

function rule<Shape extends z.core.$ZodLooseShape>(shape: Shape) {
  return z.strictObject({ hard: z.boolean(), origin: text, ...shape });
}

/** Passes from one value up, fails below another; between them it is a matter for the eye on site. */
const atLeast = rule({ passFromM: number(100), failBelowM: number(100) });

const schema = z.strictObject({
  name: text,
  note: z.string().trim().max(MAX_TEXT).default(''),
  checks: z.strictObject({
    electrode: rule({}),
    conductor: rule({ passFromMm2: number(300), failBelowMm2: number(300) }),
    resistance: rule({ passUpToOhm: number(100), failAboveOhm: number(100) }),
    electrodeDepth: atLeast,
    cable: rule({ slackM: number(100) }),
    mountHeight: rule({}),
    meter: atLeast,
    gasVent: atLeast,
    exhaust: atLeast,
    sprinkler: atLeast,
  }),
});

export type SitingRules = z.output<typeof schema>;

export type SitingCheck = keyof SitingRules['checks'];

/** The rules that hold where nobody brings others. */
export const USUAL_SITING_RULES: SitingRules = usual;

/** Pairs of thresholds and which of the two is the lower. */
const PAIRS = [
  ['failBelowM', 'passFromM'],
  ['failBelowMm2', 'passFromMm2'],
  ['passUpToOhm', 'failAboveOhm'],
] as const;

/**
 * Reads a file of siting rules.
 * @throws SiteError listing every problem with its path
 */
export function parseSitingRules(input: unknown): SitingRules {
  // Pages with a strict content security policy forbid the code that zod would otherwise compile.
  const parsed = schema.safeParse(input, { reportInput: true, jitless: true });
  if (!parsed.success) throw new SiteError(parsed.error.issues.flatMap(problemsOf));
  const problems = Object.entries(parsed.data.checks).flatMap(([name, check]) => pairProblems(name, check));
  if (problems.length > 0) throw new SiteError(problems);
  return parsed.data;
}

function pairProblems(name: string, check: Readonly<Record<string, unknown>>): Problem[] {
  return PAIRS.flatMap(([low, high]) => {
    const [lower, upper] = [check[low], check[high]];
    if (typeof lower !== 'number' || typeof upper !== 'number' || lower <= upper) return [];
    return [rulesProblem(`checks.${name}.${low}`, shown(lower), `${lower} is above ${high}`, `0 to ${upper}`)];
  });
}

function problemsOf(issue: z.core.$ZodIssue): Problem[] {
  const path = issue.path.join('.');
  if (issue.code === 'unrecognized_keys') {
    return issue.keys.map((key) => {
      const at = [path, key].filter((part) => part !== '').join('.');
      return rulesProblem(at, key, 'unknown field', knownKeys(issue.path).join(', '));
    });
  }
  const found = shown(issue.input);
  if (issue.input === undefined) return [rulesProblem(path, found, 'is missing', allowedAt(path))];
  return [rulesProblem(path, found, `${found} will not do`, allowedAt(path))];
}

/** What the usual file knows at a path; a company's file has the same shape. */
function knownKeys(path: readonly PropertyKey[]): string[] {
  const at = path.reduce<unknown>((node, key) => (node as Record<PropertyKey, unknown> | undefined)?.[key], usual);
  return Object.keys(at ?? {});
}

function allowedAt(path: string): string {
  const key = path.split('.').at(-1) ?? '';
  if (key === 'hard') return 'true, false';
  if (key === 'origin' || key === 'name' || key === 'note') return `a text of up to ${MAX_TEXT} characters`;
  if (/Mm2$/.test(key)) return 'a number from 0 to 300';
  if (/(M|Ohm)$/.test(key)) return 'a number from 0 to 100';
  return `an object with ${knownKeys(path === '' ? [] : path.split('.')).join(', ')}`;
}

function rulesProblem(path: string, found: string, wrong: string, allowed: string): Problem {
  return problem(path === '' ? 'rules' : `rules.${path}`, found, wrong, allowed);
}
