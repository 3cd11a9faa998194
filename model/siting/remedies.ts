/** What could be done about a hot wall: each remedy simulated alone, and the best two together. */
import { FINISHES } from '../finishes.ts';
import type { Box, Site, Wall } from '../site.ts';
import { USUAL_HOOD_FACES } from '../site.ts';
import { formatQuantity, type UnitSystem, usualUnits } from '../units.ts';
import { constraintFindings } from './constraints.ts';
import { siteDay } from './design-day.ts';
import { evaluateWall } from './evaluate-day.ts';
import { namedWall } from './named-wall.ts';
import { type DaySummary, decidingMarginK } from './results.ts';

/** Orders of magnitude. Common practice, no source: a company knows its own. */
export interface Effort {
  /** Work on site, hours. */
  readonly hours: number;
  readonly parts: 'none' | 'small parts' | 'a made part' | 'building work' | 'another unit';
}

export interface Remedy {
  readonly id: string;
  /** What is done, in words; of two together both. */
  readonly text: string;
  readonly effort: Effort;
  readonly peakInsideAirC: number;
  readonly marginK: number;
  /** Kelvins by which the margin grows; negative for what makes it worse. */
  readonly gainK: number;
  /** Whether the box stays within its limits with it. */
  readonly withinLimits: boolean;
  /** Whether the hard constraints still hold. */
  readonly permitted: boolean;
  /** What to mind with it; empty where there is nothing. */
  readonly caution: string;
}

export interface RemedyList {
  readonly wall: string;
  /** As it stands. */
  readonly peakInsideAirC: number;
  readonly marginK: number;
  /** Largest gain first, what makes it worse last. */
  readonly remedies: Remedy[];
  /** The two that gain most together, where that is more than one alone; null otherwise. */
  readonly bestPair: Remedy | null;
  readonly assumption: string;
}

/** A change of the site and of the wall that the box hangs on. */
interface Change {
  readonly id: string;
  readonly text: string;
  readonly effort: Effort;
  readonly caution?: string;
  /** What it changes: two that change the same thing do not go together. */
  readonly part: 'hood' | 'finish' | 'eave' | 'wall' | 'height' | 'mounting' | 'vents' | 'power' | 'battery';
  apply(site: Site, wall: Wall): { site: Site; wall: Wall };
}

const EFFORT_ASSUMPTION =
  'Hours and parts are orders of magnitude, common practice, no source. Each remedy is simulated on the same day with everything else as entered.';

const SUN_ON_LADDER = 'Work on a ladder: firm ground, three points of contact; local rules decide.';

/** Share of the work before the pairs; there are about as many of them again, and more. */
const ALONE_SHARE = 0.3;

/** What gains less than this is not worth combining, K. */
const LEAST_GAIN_K = 0.1;

/**
 * Simulates every remedy for a wall and the best pair of them.
 * @throws SiteError when the site has no wall of that name
 */
export function remediesFor(site: Site, wallName: string, units?: UnitSystem): RemedyList {
  const steps = remedySteps(site, wallName, units);
  for (let step = steps.next(); ; step = steps.next()) if (step.done) return step.value;
}

/** The same one simulation at a time: yields the share done, so that a caller can show progress and stop. */
export function* remedySteps(site: Site, wallName: string, units?: UnitSystem): Generator<number, RemedyList> {
  const wall = namedWall(site, wallName);
  const system = units ?? usualUnits(site.place.timeZone);
  const day = siteDay(site);
  const now = evaluateWall(site, wall, day);
  const tried = (changes: readonly Change[]): Remedy => {
    const changed = changes.reduce((at, change) => change.apply(at.site, at.wall), { site, wall });
    const after: DaySummary = evaluateWall(changed.site, changed.wall, day);
    const findings = constraintFindings(changed.site, changed.wall, system);
    return {
      id: changes.map(({ id }) => id).join('+'),
      text: changes.map(({ text }) => text).join('; '),
      effort: together(changes),
      peakInsideAirC: after.peakInsideAirC,
      marginK: decidingMarginK(after),
      gainK: decidingMarginK(after) - decidingMarginK(now),
      withinLimits: decidingMarginK(after) >= 0,
      permitted: findings.every(({ status }) => status !== 'fail'),
      caution: [...new Set(changes.flatMap(({ caution }) => caution ?? []))].join(' '),
    };
  };

  const changes = changesFor(site, wall, system);
  const alone: { change: Change; remedy: Remedy }[] = [];
  for (const change of changes) {
    alone.push({ change, remedy: tried([change]) });
    yield (ALONE_SHARE * alone.length) / changes.length;
  }
  const useful = alone.filter(({ remedy }) => remedy.permitted && remedy.gainK > LEAST_GAIN_K);
  const bestAlone = Math.max(0, ...useful.map(({ remedy }) => remedy.gainK));
  const couples = useful.flatMap(({ change: a }, k) =>
    useful.slice(k + 1).flatMap(({ change: b }) => (a.part === b.part ? [] : [[a, b] as const])),
  );
  const pairs: Remedy[] = [];
  for (const couple of couples) {
    pairs.push(tried(couple));
    yield ALONE_SHARE + ((1 - ALONE_SHARE) * pairs.length) / couples.length;
  }
  const best = pairs.reduce<Remedy | null>(
    (found, pair) => (pair.gainK > (found?.gainK ?? bestAlone) ? pair : found),
    null,
  );
  return {
    wall: wall.name,
    peakInsideAirC: now.peakInsideAirC,
    marginK: decidingMarginK(now),
    remedies: alone.map(({ remedy }) => remedy).sort((a, b) => b.gainK - a.gainK),
    bestPair: best?.permitted ? best : null,
    assumption: EFFORT_ASSUMPTION,
  };
}

/** Two jobs in one visit: hours add up, and the greater of the parts counts. */
function together(changes: readonly Change[]): Effort {
  const order: Effort['parts'][] = ['none', 'small parts', 'a made part', 'another unit', 'building work'];
  return {
    hours: changes.reduce((sum, { effort }) => sum + effort.hours, 0),
    parts: order[Math.max(...changes.map(({ effort }) => order.indexOf(effort.parts)))] as Effort['parts'],
  };
}

/** The remedies that a site and a wall leave room for. */
function changesFor(site: Site, wall: Wall, units: UnitSystem): Change[] {
  return [
    ...hoods(site.box),
    ...finishes(site.box),
    awning(site.box, wall, units),
    ...otherWalls(site, wall),
    ...heights(site, units),
    ...brackets(site.box, units),
    ...vents(site.box, units),
    lessPower(site.box, units),
    ...batteryOut(site.box),
  ];
}

const withBox = (changes: (box: Box) => Partial<Box>) => (site: Site, wall: Wall) => ({
  site: { ...site, box: { ...site.box, ...changes(site.box) } },
  wall,
});

function hoods({ hood }: Box): Change[] {
  if (hood !== null) return [];
  const made = (solarAbsorptance: number) => ({
    faces: [...USUAL_HOOD_FACES],
    gapM: 0.03,
    solarAbsorptance,
    emittance: 0.9,
    openTop: true,
  });
  const effort = { hours: 1, parts: 'a made part' } as const;
  const white = FINISHES.whitePaint.weathered.solarAbsorptance;
  return [
    {
      id: 'whiteHood',
      part: 'hood',
      text: 'a white hood over front, sides and lid, open at the top',
      effort,
      apply: withBox(() => ({ hood: made(white) })),
    },
    {
      id: 'darkHood',
      part: 'hood',
      text: 'a black hood over front, sides and lid, open at the top',
      effort,
      apply: withBox(() => ({ hood: made(FINISHES.blackPaint.weathered.solarAbsorptance) })),
    },
  ];
}

/** A repaint that gains less absorptance than this is not worth a visit. */
const LEAST_LIGHTER = 0.05;

function finishes(box: Box): Change[] {
  const { solarAbsorptance, emittance } = FINISHES.whitePaint.weathered;
  if (box.solarAbsorptance < solarAbsorptance + LEAST_LIGHTER) return [];
  return [
    {
      id: 'lighterFinish',
      part: 'finish',
      text: 'a white finish, weathered',
      effort: { hours: 1, parts: 'small parts' },
      caution: 'Paint only what its maker permits to be painted.',
      apply: withBox(() => ({ solarAbsorptance, emittance })),
    },
  ];
}

const AWNING_DEPTH_M = 0.6;

function awning(box: Box, wall: Wall, units: UnitSystem): Change {
  const depth = formatQuantity('length', AWNING_DEPTH_M, units);
  const effort = { hours: 4, parts: 'building work' } as const;
  const change = { id: 'awning', part: 'eave', effort, caution: SUN_ON_LADDER } as const;
  const { eave } = wall;
  if (eave !== null) {
    return {
      ...change,
      text: `an eave ${depth} deeper`,
      apply: (site, on) => ({ site, wall: { ...on, eave: { ...eave, depthM: eave.depthM + AWNING_DEPTH_M } } }),
    };
  }
  const above = {
    depthM: AWNING_DEPTH_M,
    heightAboveBoxM: 0.3,
    widthM: box.widthM + 1.2,
    offsetM: 0,
    transmittance: 0,
  };
  return {
    ...change,
    text: `an awning ${depth} deep close above the box`,
    apply: (site, on) => ({ site, wall: { ...on, eave: above } }),
  };
}

function otherWalls(site: Site, wall: Wall): Change[] {
  return site.walls
    .filter(({ name }) => name !== wall.name)
    .map((other) => ({
      id: `wall:${other.name}`,
      part: 'wall',
      text: `wall "${other.name}" instead`,
      effort: { hours: 2, parts: 'small parts' },
      apply: (at) => ({ site: at, wall: other }),
    }));
}

function heights({ box, constraints }: Site, units: UnitSystem): Change[] {
  return (constraints.mountHeightM ?? [])
    .filter((heightM) => Math.abs(heightM - box.mountHeightM) > 0.05)
    .map((heightM) => ({
      id: heightM < box.mountHeightM ? 'lower' : 'higher',
      part: 'height',
      text: `the middle of the box at ${formatQuantity('length', heightM, units)}`,
      effort: { hours: 0.5, parts: 'none' },
      apply: (site, on) => {
        // The eave stays where it is.
        const eave = on.eave && {
          ...on.eave,
          heightAboveBoxM: Math.max(0, on.eave.heightAboveBoxM + site.box.mountHeightM - heightM),
        };
        return { site: { ...site, box: { ...site.box, mountHeightM: heightM } }, wall: { ...on, eave } };
      },
    }));
}

const BRACKET_M = 0.05;

function brackets(box: Box, units: UnitSystem): Change[] {
  if (box.mount !== 'wall' || box.standOffM >= BRACKET_M) return [];
  return [
    {
      id: 'brackets',
      part: 'mounting',
      text: `brackets that hold it ${formatQuantity('smallLength', BRACKET_M, units)} off the wall`,
      effort: { hours: 0.5, parts: 'small parts' },
      apply: withBox(() => ({ standOffM: BRACKET_M })),
    },
  ];
}

/** Free area of each row of openings, as a share of the front. */
const VENT_SHARE = 0.04;

function vents({ vents: now, widthM, heightM }: Box, units: UnitSystem): Change[] {
  if (now !== null) return [];
  const areaM2 = VENT_SHARE * widthM * heightM;
  const area = { lowAreaM2: areaM2, highAreaM2: areaM2 };
  return [
    {
      id: 'vents',
      part: 'vents',
      text: `openings low and high in the box, ${formatQuantity('smallArea', areaM2, units)} each`,
      effort: { hours: 1, parts: 'small parts' },
      caution: 'Openings let in dust, insects and water: only where the maker provides for them.',
      apply: withBox(() => ({ vents: { ...area, heightM: 0.8 * heightM, dischargeCoefficient: 0.6 } })),
    },
  ];
}

const LESS_POWER = 0.75;

function lessPower(box: Box, units: UnitSystem): Change {
  return {
    id: 'lessPower',
    part: 'power',
    text: `a unit that gives off a quarter less, ${formatQuantity('power', LESS_POWER * box.powerW, units)}`,
    effort: { hours: 0.5, parts: 'another unit' },
    apply: withBox(({ powerW, compartments }) => ({
      powerW: LESS_POWER * powerW,
      compartments: compartments && { ...compartments, lowerPowerW: LESS_POWER * compartments.lowerPowerW },
    })),
  };
}

function batteryOut({ battery }: Box): Change[] {
  if (battery === null) return [];
  return [
    {
      id: 'batteryOut',
      part: 'battery',
      text: 'the battery in a box of its own in the shade',
      effort: { hours: 2, parts: 'another unit' },
      apply: withBox(() => ({ battery: null })),
    },
  ];
}
