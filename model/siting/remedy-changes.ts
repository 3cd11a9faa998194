/** What could be changed about a box and its wall: the list from which remedies are simulated. */
import { BATTERY_CAUTION } from '../cautions.ts';
import { FIELDS } from '../fields.ts';
import { FINISHES } from '../finishes.ts';
import type { Box, Site, Wall } from '../site.ts';
import { USUAL_HOOD_FACES, USUAL_VENT_SPAN, ventedHeightM } from '../site.ts';
import { ruleProblems } from '../site-rules.ts';
import { formatQuantity, readNumberText, type UnitSystem } from '../units.ts';

/** Orders of magnitude. Common practice, no source: a company knows its own. */
export interface Effort {
  /** Work on site, hours. */
  readonly hours: number;
  readonly parts: 'none' | 'small parts' | 'a made part' | 'building work' | 'another unit';
}

/** A site and the wall that the box hangs on. */
export interface Standing {
  readonly site: Site;
  readonly wall: Wall;
}

/** A change of the site and of the wall that the box hangs on. */
export interface Change {
  readonly id: string;
  readonly text: string;
  readonly effort: Effort;
  readonly caution?: string;
  /** What it changes: two that change the same thing do not go together. */
  readonly part: 'hood' | 'finish' | 'eave' | 'wall' | 'height' | 'mounting' | 'vents' | 'power' | 'battery';
  apply(site: Site, wall: Wall): Standing;
}

const PARTS: readonly Effort['parts'][] = ['none', 'small parts', 'a made part', 'another unit', 'building work'];

/** The effort of changes in one visit: hours add up, and the greater of the parts counts. */
export function effortOf(changes: readonly Change[]): Effort {
  return {
    hours: changes.reduce((sum, { effort }) => sum + effort.hours, 0),
    parts: PARTS[Math.max(...changes.map(({ effort }) => PARTS.indexOf(effort.parts)))] as Effort['parts'],
  };
}

/** Orders changes by effort, parts before hours; negative where `a` is less. */
export function effortOrder(a: readonly Change[], b: readonly Change[]): number {
  const [one, other] = [effortOf(a), effortOf(b)];
  return PARTS.indexOf(one.parts) - PARTS.indexOf(other.parts) || one.hours - other.hours;
}

const SUN_ON_LADDER = 'Work on a ladder: firm ground, three points of contact; local rules decide.';

/** Another wall comes first, so that what is done to the wall is done to that one; then the height, which an awning hangs by. */
const FIRST: readonly Change['part'][] = ['wall', 'height'];

/** Several changes together. */
export function changed(standing: Standing, changes: readonly Change[]): Standing {
  const turn = ({ part }: Change) => (FIRST.includes(part) ? FIRST.indexOf(part) : FIRST.length);
  const ordered = [...changes].sort((a, b) => turn(a) - turn(b));
  return ordered.reduce((at, change) => change.apply(at.site, at.wall), standing);
}

/** Whether a site may be so: by the rules that an entered one must pass, and with the box below its eave. */
export function possible({ site, wall }: Standing): boolean {
  if (wall.eave !== null && wall.eave.heightAboveBoxM < 0) return false;
  return ruleProblems({ ...site, walls: [wall] }, readNumberText).length === 0;
}

/** The remedies that a site and a wall leave room for. */
export function changesFor(site: Site, wall: Wall, units: UnitSystem): Change[] {
  return [
    ...hoods(site.box),
    ...finishes(site.box),
    ...awnings(site.box, units),
    ...otherWalls(site, wall),
    ...heights(site, units),
    ...brackets(site.box, units),
    ...vents(site.box, units),
    ...lessPower(site.box, units),
    ...batteryOut(site.box),
  ];
}

const withBox = (changes: (box: Box) => Partial<Box>) => (site: Site, wall: Wall) => ({
  site: { ...site, box: { ...site.box, ...changes(site.box) } },
  wall,
});

function hoods({ hood }: Box): Change[] {
  if (hood !== null) return lighterHood(hood);
  const made = (solarAbsorptance: number) => ({
    faces: [...USUAL_HOOD_FACES],
    gapM: FIELDS['box.hood.gapM'].default.value,
    solarAbsorptance,
    emittance: FIELDS['box.hood.emittance'].default.value,
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

/** A dark hood that is there gets paint. */
function lighterHood(hood: NonNullable<Box['hood']>): Change[] {
  const { solarAbsorptance, emittance } = FINISHES.whitePaint.weathered;
  if (hood.solarAbsorptance < solarAbsorptance + LEAST_LIGHTER) return [];
  return [
    {
      id: 'lighterHood',
      part: 'hood',
      text: 'a white finish on the hood, weathered',
      effort: { hours: 1, parts: 'small parts' },
      apply: withBox((box) => ({ hood: box.hood && { ...box.hood, solarAbsorptance, emittance } })),
    },
  ];
}

/** A repaint that gains less absorptance than this is not worth a visit. Common practice, no source. */
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

/** How far an awning stands out, how close above the box it hangs and how much wider than the box it is. Common practice, no source. */
const AWNING_DEPTH_M = 0.6;
const AWNING_ABOVE_M = 0.3;
const AWNING_WIDER_M = 1.2;

function awnings({ mount, widthM }: Box, units: UnitSystem): Change[] {
  // Nothing on the wall shades a box that stands away from it.
  if (mount === 'post') return [];
  const above = {
    depthM: AWNING_DEPTH_M,
    heightAboveBoxM: AWNING_ABOVE_M,
    widthM: widthM + AWNING_WIDER_M,
    offsetM: 0,
    transmittance: 0,
  };
  return [
    {
      id: 'awning',
      part: 'eave',
      text: `an awning close above the box, or an eave that much deeper: ${formatQuantity('length', AWNING_DEPTH_M, units)}`,
      effort: { hours: 4, parts: 'building work' },
      caution: SUN_ON_LADDER,
      apply: (site, on) => {
        const eave = on.eave === null ? above : { ...on.eave, depthM: on.eave.depthM + AWNING_DEPTH_M };
        return { site, wall: { ...on, eave } };
      },
    },
  ];
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
  return [...new Set(constraints.mountHeightM ?? [])]
    .filter((heightM) => Math.abs(heightM - box.mountHeightM) > 0.05)
    .map((heightM) => ({
      id: `${heightM < box.mountHeightM ? 'lower' : 'higher'}:${heightM}`,
      part: 'height',
      text: `the middle of the box at ${formatQuantity('length', heightM, units)}`,
      effort: { hours: 0.5, parts: 'none' },
      apply: (site, on) => {
        // The eave stays where it is.
        const eave = on.eave && {
          ...on.eave,
          heightAboveBoxM: on.eave.heightAboveBoxM + site.box.mountHeightM - heightM,
        };
        return { site: { ...site, box: { ...site.box, mountHeightM: heightM } }, wall: { ...on, eave } };
      },
    }));
}

/** Length of usual brackets. Common practice, no source. */
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

/** Free area of each row of openings, as a share of the front. Common practice, no source. */
const VENT_SHARE = 0.04;

/** Openings smaller than this clog, and are not worth their drilling. Common practice, no source. */
const LEAST_VENT_M2 = 1e-4;

function vents({ vents: now, widthM, heightM, compartments }: Box, units: UnitSystem): Change[] {
  if (now !== null) return [];
  const areaM2 = VENT_SHARE * widthM * heightM;
  if (areaM2 < LEAST_VENT_M2) return [];
  const dischargeCoefficient = FIELDS['box.vents.dischargeCoefficient'].default.value;
  const area = { lowAreaM2: areaM2, highAreaM2: areaM2 };
  const spanM = USUAL_VENT_SPAN * ventedHeightM({ heightM, compartments });
  return [
    {
      id: 'vents',
      part: 'vents',
      text: `openings low and high in the box, ${formatQuantity('smallArea', areaM2, units)} each`,
      effort: { hours: 1, parts: 'small parts' },
      caution: 'Openings let in dust, insects and water: only where the maker provides for them.',
      apply: withBox(() => ({ vents: { ...area, heightM: spanM, dischargeCoefficient } })),
    },
  ];
}

/** Heat of a thriftier unit against the one that is there. Common practice, no source. */
const LESS_POWER = 0.75;

function lessPower({ powerW: now }: Box, units: UnitSystem): Change[] {
  if (now <= 0) return [];
  return [
    {
      id: 'lessPower',
      part: 'power',
      text: `a unit that gives off a quarter less, ${formatQuantity('power', LESS_POWER * now, units)}`,
      effort: { hours: 0.5, parts: 'another unit' },
      apply: withBox(({ powerW, compartments }) => ({
        powerW: LESS_POWER * powerW,
        compartments: compartments && { ...compartments, lowerPowerW: LESS_POWER * compartments.lowerPowerW },
      })),
    },
  ];
}

function batteryOut({ battery }: Box): Change[] {
  if (battery === null) return [];
  return [
    {
      id: 'batteryOut',
      part: 'battery',
      text: 'the battery in a box of its own in the shade',
      effort: { hours: 2, parts: 'another unit' },
      caution: BATTERY_CAUTION,
      apply: withBox(() => ({ battery: null })),
    },
  ];
}
