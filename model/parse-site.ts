/** Reads a site: checks it against the schema, fills in what was left out, and remembers what it filled in. */
import tzLookup from '@photostructure/tz-lookup';
import { distance } from 'fastest-levenshtein';
import type { z } from 'zod';
import { assumedIn } from './assumed.ts';
import { edgeFacing, outlineEdges, type PlanPoint } from './building-outline.ts';
import { CLIMATE_SAMPLES } from './climate/samples.ts';
import { wrapDegrees } from './compass.ts';
import { CONSTRUCTIONS } from './constructions.ts';
import { allowedText, FIELDS, fieldAt, generalPath, type NumberField } from './fields.ts';
import { FINISHES } from './finishes.ts';
import { issueWords } from './issue-words.ts';
import { rawAt } from './raw-site.ts';
import { buildSiteSchema, type KnownKeys, type Site, USUAL_VENT_SPAN, ventedHeightM } from './site.ts';
import { type Problem, problem, SiteError, shown } from './site-error.ts';
import { ruleProblems } from './site-rules.ts';
import type { QuantityReader } from './units.ts';

/** A parser of site files whose text fields are read by `read`; the schema is built once, here. */
export function siteParser(read: QuantityReader): (input: unknown) => Site {
  const knownKeys: KnownKeys = new Map();
  const schema = buildSiteSchema(read, knownKeys);

  const filled = (input: unknown): Site => {
    // Pages with a strict content security policy forbid the code that zod would otherwise compile.
    const parsed = schema.safeParse(input, { reportInput: true, jitless: true, error: issueWords });
    const problems = [
      ...(parsed.success ? [] : parsed.error.issues.flatMap((issue) => problemsOf(issue, knownKeys))),
      ...ruleProblems(input, read),
    ];
    if (!parsed.success || problems.length > 0) throw new SiteError(problems);
    return fillIn(parsed.data, input);
  };

  return (input) => {
    const site = filled(input);
    return { ...site, assumed: assumedIn(site, input, filled) };
  };
}

type Parsed = z.output<ReturnType<typeof buildSiteSchema>>;

/** Fills in what depends on other fields. */
function fillIn(parsed: Parsed, input: unknown): Site {
  const entered = (path: string): boolean => rawAt(input, path) !== undefined;
  const { place, climate, box, building, walls } = parsed;
  const sample = CLIMATE_SAMPLES.find(({ name }) => name === climate.sample);
  const altitudeM = !entered('place.altitudeM') && sample ? sample.altitudeM : place.altitudeM;
  const day = climate.designDay;
  const topM = box.mountHeightM + box.heightM / 2;
  const buildingM = building && (entered('building.heightM') ? building.heightM : Math.max(building.heightM, topM));
  return {
    ...parsed,
    place: { ...place, altitudeM, timeZone: place.timeZone ?? tzLookup(place.latitudeDeg, place.longitudeDeg) },
    climate: {
      ...climate,
      // Air is never moister than saturated: on a cold day the usual dew point would be.
      ...(day &&
        !entered('climate.designDay.dewPointC') && {
          designDay: { ...day, dewPointC: Math.min(day.dewPointC, day.maxC - day.dailyRangeK) },
        }),
      ...(climate.cycle !== undefined && { windMs: climate.windMs ?? FIELDS['climate.windMs'].default.value }),
    },
    building: building && { ...building, heightM: buildingM ?? building.heightM },
    box: filledBox(box),
    walls: walls.map((wall, index) => ({
      ...wall,
      azimuthDeg: wrapDegrees(wall.azimuthDeg),
      ...(building !== null && placeOnOutline(wall, building.outlineM)),
      solarAbsorptance: wall.solarAbsorptance ?? CONSTRUCTIONS[wall.construction].solarAbsorptance,
      heightM: entered(`walls.${index}.heightM`)
        ? wall.heightM
        : Math.max(buildingM ?? wall.heightM, topM + (wall.eave?.heightAboveBoxM ?? 0)),
    })),
  };
}

/** The finish stands in for absorptance and emittance, the height of the box for that between its vents. */
function filledBox(box: Parsed['box']): Site['box'] {
  const finish = box.finish === null ? null : FINISHES[box.finish][box.finishState];
  return {
    ...box,
    solarAbsorptance: box.solarAbsorptance ?? finish?.solarAbsorptance ?? FIELDS['box.solarAbsorptance'].default.value,
    emittance: box.emittance ?? finish?.emittance ?? FIELDS['box.emittance'].default.value,
    vents: box.vents && { ...box.vents, heightM: box.vents.heightM ?? USUAL_VENT_SPAN * ventedHeightM(box) },
  };
}

/** Where a wall stands on the building: on the longest edge that faces its way, the box in the middle. */
function placeOnOutline(wall: Parsed['walls'][number], outline: readonly PlanPoint[]) {
  const edge = wall.edge ?? edgeFacing(outline, wall.azimuthDeg) ?? 0;
  const lengthM = outlineEdges(outline)[edge]?.lengthM ?? 0;
  return { edge, alongM: wall.alongM ?? lengthM / 2 };
}

/** What a schema found wrong, in the words of a site's problems; `fieldOf` finds the number field of a path. */
export function problemsOf(
  issue: z.core.$ZodIssue,
  knownKeys: KnownKeys,
  fieldOf: (path: string) => NumberField | undefined = fieldAt,
): Problem[] {
  const path = issue.path.join('.');
  const found = shown(issue.input);
  if (issue.code === 'unrecognized_keys') {
    const known = knownKeys.get(generalPath(path)) ?? [];
    return issue.keys.map((key) => {
      const keyPath = [path, key].filter((part) => part !== '').join('.');
      return problem(keyPath, key, `unknown field${guessText(key, known)}`, known.join(', '));
    });
  }
  if (issue.code === 'invalid_type' && issue.expected === 'object' && issue.input !== undefined) {
    const known = knownKeys.get(generalPath(path));
    return [problem(path, found, `${found} is not an object`, known ? `an object with ${known.join(', ')}` : '')];
  }
  const field = fieldOf(path);
  if (issue.input === undefined && issue.code !== 'custom') {
    return [problem(path, found, 'is missing', field ? allowedText(field) : '')];
  }
  if (issue.code === 'invalid_value') {
    const allowed = issue.values.map(String);
    const guess = typeof issue.input === 'string' ? guessText(issue.input, allowed) : '';
    return [problem(path, found, `${found} is not known${guess}`, allowed.join(', '))];
  }
  // A pair of numbers that is too long or too short says so itself.
  const counted = issue.code === 'too_big' || issue.code === 'too_small';
  if (field && issue.code !== 'custom' && !counted) {
    return [problem(path, found, `${found} is not a number`, allowedText(field))];
  }
  // Messages of the schema may carry what is allowed behind the same words as ours.
  const [wrong = '', allowed = ''] = issue.message.split('; allowed: ');
  const range = issue.code === 'custom' ? String(issue.params?.['allowed'] ?? allowed) : allowed;
  return [problem(path, found, wrong, range)];
}

/** "; did you mean …?" for a misspelt word that is near a known one; nothing otherwise. */
function guessText(word: string, known: readonly string[]): string {
  const lower = word.slice(0, 40).toLowerCase();
  let best = '';
  let bestDistance = Math.max(1, Math.floor(lower.length / 3)) + 1;
  for (const candidate of known) {
    const begun = lower.length > 2 && candidate.toLowerCase().startsWith(lower);
    const far = begun ? 1 : distance(lower, candidate.toLowerCase());
    if (far < bestDistance) [best, bestDistance] = [candidate, far];
  }
  return best === '' ? '' : `; did you mean "${best}"?`;
}
