/** What a forecast rests on: the fields that were filled in, and what the model takes for granted. */
import { type DesignClimate, designClimate } from '../climate/design-climate.ts';
import { CONSTRUCTIONS } from '../constructions.ts';
import { DUTIES } from '../duty.ts';
import { FIELDS, type FieldPath, generalPath, type NumberField } from '../fields.ts';
import { FINISHES } from '../finishes.ts';
import type { Site } from '../site.ts';
import { INSIDE_ASSUMPTIONS } from '../thermal/inside.ts';
import { OUTDOOR_ASSUMPTIONS } from '../thermal/outdoor-surface.ts';
import { ventsOpen } from '../thermal/vents.ts';
import { formatQuantity, type UnitSystem, usualUnits } from '../units.ts';
import type { Assumption } from './results.ts';

/** What the design day of a site rests on, as `evaluateDay` says it, without the day being computed. */
export function dayAssumptions(site: Site, units?: UnitSystem): Assumption[] {
  return assumptionsOf(site, designClimate(site), units);
}

/** Assumptions of a site's forecast, the filled-in fields first. */
export function assumptionsOf(site: Site, climate: DesignClimate, units?: UnitSystem): Assumption[] {
  const system = units ?? usualUnits(site.place.timeZone);
  return [
    { subject: 'climate', text: climate.text, origin: climate.origin },
    ...filledIn(site, system),
    ...modelAssumptions(site),
  ];
}

/** One line for each filled-in field; the same field of several walls in one line. */
function filledIn(site: Site, units: UnitSystem): Assumption[] {
  const lines = new Map<string, { assumption: Assumption; walls: string[] }>();
  for (const path of site.assumed) {
    const general = generalPath(path);
    const field: NumberField | undefined = FIELDS[general as FieldPath];
    const value = valueAt(site, path);
    if (value === undefined || value === null || NOT_IN_USE[path]?.(site)) continue;
    const wall = site.walls[Number(/^walls\.(\d+)/.exec(path)?.[1])];
    const number = (one: unknown) =>
      typeof one === 'number' && field ? formatQuantity(field.kind, one, units) : String(one);
    const text = OWN_TEXTS[general]?.(value) ?? [value].flat().map(number).join(' to ');
    const key = `${general}=${text}`;
    const usual = OWN_ORIGINS[general]?.(site) ?? (field?.default?.value === value ? field.default.origin : undefined);
    const line = lines.get(key) ?? { assumption: describe(general, field, text, usual), walls: [] };
    if (wall) line.walls.push(wall.name);
    lines.set(key, line);
  }
  return [...lines.values()].map(({ assumption, walls }) =>
    walls.length === 0 || walls.length === site.walls.length
      ? assumption
      : { ...assumption, text: `${assumption.text} (${walls.join(', ')})` },
  );
}

function describe(general: string, field: NumberField | undefined, text: string, usual?: string): Assumption {
  const label = field?.label ?? OTHER_LABELS[general] ?? general;
  return {
    subject: general,
    text: `${label}: ${text}`,
    origin: usual ?? OTHER_ORIGINS[general] ?? 'default',
  };
}

/** Origins that depend on what else is entered, whatever the value. */
const OWN_ORIGINS: Readonly<Record<string, (site: Site) => string | undefined>> = {
  'box.solarAbsorptance': finishOrigin,
  'box.emittance': finishOrigin,
  'walls[].heightM': ({ building }) => (building === null ? undefined : 'of the building, or as high as the box needs'),
};

function finishOrigin({ box }: Site): string | undefined {
  return box.finish === null
    ? undefined
    : `${FINISHES[box.finish].label}, ${box.finishState}: ${FINISHES[box.finish].source}`;
}

/** Fields that were filled in and that nothing asks for. */
const NOT_IN_USE: Readonly<Record<string, (site: Site) => boolean>> = {
  'box.finishState': ({ box }) => box.finish === null,
  'box.postDistanceM': ({ box }) => box.mount !== 'post',
  'box.standOffM': ({ box }) => box.mount === 'post',
};

const LIMITED: Readonly<Record<Site['limits']['refersTo'], string>> = {
  insideAir: 'the air inside the box',
  outsideAir: 'the outside air',
  componentCase: 'the case of the electronics',
};

/** Values that are neither a number nor a word for people. */
const OWN_TEXTS: Readonly<Record<string, (value: unknown) => string>> = {
  'limits.refersTo': (value) => LIMITED[value as Site['limits']['refersTo']],
  'box.hood.faces': (value) => [value].flat().join(', '),
  'box.hood.openTop': (value) => (value === true ? 'yes' : 'no'),
};

const OTHER_LABELS: Readonly<Record<string, string>> = {
  'place.timeZone': 'time zone',
  'walls[].construction': 'wall construction',
  'limits.refersTo': 'the limits refer to',
  'box.mount': 'the box is mounted on',
  'box.hood.faces': 'faces under the hood',
  'box.hood.openTop': 'the hood is open at its top',
  'walls[].obstructions[].leafOnMonths': 'months in leaf, 1 for January',
  'box.finishState': 'state of the finish',
  'box.material': 'outer skin, as touch feels it',
  'box.duty': 'heat inside through the day',
  'walls[].edge': "edge of the building's outline, counted from 0",
};

const OTHER_ORIGINS: Readonly<Record<string, string>> = {
  'place.altitudeM': 'of the climate sample',
  'climate.designDay.dewPointC': 'the lowest air temperature of the day: air is never moister than saturated',
  'walls[].heightM': 'as high as the box and the eave on it need',
  'place.timeZone': 'looked up from the coordinates; near a border check it',
  'walls[].solarAbsorptance': 'of the wall construction, mid-range of engineering tables',
  'walls[].construction': `${CONSTRUCTIONS.brick.label} where nothing is entered`,
  'box.mount': 'on the wall where nothing is entered',
  'box.hood.faces': 'all but underside and back where nothing is entered',
  'box.hood.openTop': 'open where nothing is entered',
  'walls[].obstructions[].leafOnMonths':
    'common practice, no source; of the north, half a year later south of the equator',
  'box.finishState': 'on the safe side for light finishes',
  'box.material': 'on the safe side',
  'box.duty': 'the same all day where nothing is entered',
  'box.vents.heightM': 'four fifths of the height of the box',
  'walls[].edge': 'the longest that faces the way of the wall',
  'walls[].alongM': 'in the middle of the edge',
  'limits.refersTo': 'the air inside the box where nothing is entered',
  'constraints.mountHeightM': 'common practice, no source: working height',
};

function valueAt(site: Site, path: string): unknown {
  return path.split('.').reduce<unknown>((at, key) => (at as Record<string, unknown> | null | undefined)?.[key], site);
}

const percent = (share: number): string => `${Math.round(share * 100)} %`;

const COMMON = 'common practice, no source';

function modelAssumptions(site: Site): Assumption[] {
  const a = INSIDE_ASSUMPTIONS;
  return [
    { subject: 'box', text: boxText(site.box), origin: 'model' },
    {
      subject: 'box',
      text: `half of the mass is shell (${percent(a.shellMassShare)}), specific heat ${a.specificHeatJkgK} J/(kg K), inside emittance ${a.insideEmittance}`,
      origin: COMMON,
    },
    {
      subject: 'electronics',
      text: `one board of ${percent(a.boardAreaShare)} of the back plate, both sides in the air; a component runs hotter than its board`,
      origin: COMMON,
    },
    ...insideAssumptions(site.box),
    {
      subject: 'wind',
      text: windText(site),
      origin: 'Sparrow, Ramsey and Mass 1979: half the coefficient in the lee, which a quarter of the speed gives',
    },
    {
      subject: 'surroundings',
      text: 'eaves, obstructions and the skyline are as warm as the air and reflect nothing; the wall behind the box gets no sun; indoors is as warm as the mean outside air; dry ground',
      origin: COMMON,
    },
    { subject: 'weather', text: 'the design day is clear, and the days before were like it', origin: 'model' },
  ];
}

function boxText({ hood, vents, mount }: Site['box']): string {
  const parts = [
    ventsOpen(vents)
      ? 'vents that air rises through from low to high openings, driven by warmth alone, not by wind'
      : 'closed box, no vents',
    hood ? 'under a hood of thin sheet, the air under its level parts still' : 'no hood',
    ...(mount === 'post' ? ['on a post, its back in the open'] : []),
    'each sheet has one temperature',
  ];
  return parts.join('; ');
}

function insideAssumptions({ battery, compartments, duty }: Site['box']): Assumption[] {
  const assumptions: Assumption[] = [];
  if (battery !== null) {
    const text = 'the battery is a block of sealed lead-acid, 2400 kg/m3 and 900 J/(kg K), with one temperature';
    assumptions.push({ subject: 'battery', text, origin: 'value from memory' });
  }
  if (compartments !== null) {
    const text =
      'two rooms with a closed sheet of metal between them: electronics and vents in the upper one, a battery in the lower one; limits on the air inside hold for the upper one';
    assumptions.push({ subject: 'rooms', text, origin: 'model' });
  }
  if (duty !== 'constant') {
    assumptions.push({ subject: 'duty', text: `heat inside: ${DUTIES[duty].label}`, origin: DUTIES[duty].origin });
  }
  return assumptions;
}

function windText({ climate, box, walls }: Site): string {
  const { windShelter, windwardShelter, postShelter } = OUTDOOR_ASSUMPTIONS;
  const known = climate.windFromDeg !== undefined;
  const along = known
    ? `a wall that the wind meets has ${windwardShelter} of the free wind, one in the lee ${windShelter}`
    : `along the wall the wind is ${windShelter} of the free wind, its direction not known`;
  const own = walls.filter((wall) => wall.windShelter !== null).map((wall) => `${wall.windShelter} at ${wall.name}`);
  const entered = own.length > 0 ? `; as entered ${own.join(', ')}` : '';
  return `${along}${box.mount === 'post' ? `; the box on its post has ${postShelter} of it` : ''}${entered}`;
}
