/** What a difference is called, how each of the two boxes is told from the other, and what is kept or changes with it. */
import { lowered } from '../capital.ts';
import { designClimate, resolvedClearDay } from '../climate/design-climate.ts';
import { CLIMATE_SAMPLES, STANDARD_CYCLES } from '../climate/samples.ts';
import { compassPoint } from '../compass.ts';
import { FINISHES } from '../finishes.ts';
import type { Site } from '../site.ts';
import { namedWall } from '../siting/named-wall.ts';
import { pressureAtAltitude } from '../solar/atmosphere.ts';
import { formatQuantity, type UnitSystem } from '../units.ts';
import type { Difference } from './difference.ts';
import { SCREEN, type Standing } from './second-site.ts';

/** What a difference is called in a list. */
export const DIFFERENCE_LABELS: Readonly<Record<Difference['kind'], string>> = {
  wall: 'another wall',
  finish: 'another finish',
  hood: 'a hood',
  eave: 'an eave',
  shade: 'a screen before the box',
  power: 'another power',
  wind: 'another wind',
  climate: 'another climate',
  altitude: 'another altitude',
};

/** A climate by its name, as a person reads it. */
export function climateTitle(name: string): string {
  const known = [...CLIMATE_SAMPLES, ...STANDARD_CYCLES].find((one) => one.name === name);
  return known === undefined ? name : lowered(known.title);
}

/** What is done, as an object of "What does … change?": "white paint or white plastic, weathered". */
export function doneWords(difference: Difference, { site, wallName }: Standing, units: UnitSystem): string {
  const { box } = site;
  switch (difference.kind) {
    case 'wall':
      return `the wall "${difference.to}" instead of "${wallName}"`;
    case 'finish':
      return finishWords(difference);
    case 'hood':
      return difference.to === 'none' ? 'taking the hood off' : hoodWords(difference.to);
    case 'eave':
      return difference.depthM === 0 ? 'taking the eave away' : eaveWords(difference, units);
    case 'shade':
      return screenWords(difference.transmittance, units);
    case 'power': {
      const twice = box.powerW > 0 && Math.abs(difference.powerW / box.powerW - 2) < 1e-6;
      return `${twice ? 'twice the power, ' : ''}${powerWords(difference.powerW, units)}`;
    }
    case 'wind':
      return windWords(difference.windMs, units);
    case 'climate':
      return `the climate "${climateTitle(difference.to)}"`;
    case 'altitude':
      return `an altitude of ${formatQuantity('length', difference.altitudeM, units, 0)}`;
  }
}

/** How box A is told from box B, and the other way round: "14.0 W inside" and "28.0 W inside". */
export function boxLabels(
  difference: Difference,
  a: Standing,
  b: Standing,
  units: UnitSystem,
): { readonly a: string; readonly b: string } {
  const [boxA, boxB] = [a.site.box, b.site.box];
  const both = (of: (standing: Standing) => string) => ({ a: of(a), b: of(b) });
  switch (difference.kind) {
    case 'wall':
      return both(
        ({ site, wallName }) => `${wallName} wall, facing ${compassPoint(namedWall(site, wallName).azimuthDeg)}`,
      );
    case 'finish':
      return { a: ownFinish(a.site), b: finishWords(difference) };
    case 'hood':
      return {
        a:
          boxA.hood === null
            ? 'no hood'
            : `the hood that it has (takes in ${percent(boxA.hood.solarAbsorptance)} of the sun)`,
        b: boxB.hood === null || difference.to === 'none' ? 'no hood' : hoodWords(difference.to),
      };
    case 'eave':
      return both(({ site, wallName }) => {
        const { eave } = namedWall(site, wallName);
        return eave === null ? 'no eave' : eaveWords(eave, units);
      });
    case 'shade':
      return { a: 'nothing more before the box', b: screenWords(difference.transmittance, units) };
    case 'power':
      return both(({ site }) => powerWords(site.box.powerW, units));
    case 'wind':
      return both(({ site }) => windWords(windOf(site), units));
    case 'climate':
      return { a: ownClimate(a.site), b: climateTitle(difference.to) };
    case 'altitude':
      return both(({ site }) => `${formatQuantity('length', site.place.altitudeM, units, 0)} above the sea`);
  }
}

/** What else moves with the difference, and what is kept. */
export function keptWords(difference: Difference, a: Standing, b: Standing, units: UnitSystem): string[] {
  const same = 'Everything else is the same: place, date, box and wall.';
  switch (difference.kind) {
    case 'wall':
      return ['Place, day and box are the same; each wall has its own eave, obstructions and surface.'];
    case 'finish':
      return ['Only absorptance and emittance of the box change.', same];
    case 'climate':
      return [
        `The date stays ${designClimate(b.site).date}, and so does the place: the sun takes the same way and the altitude is the same.`,
        isCycle(difference.to)
          ? 'Air, humidity and sun are those of the tabulated day; the wind is kept, because the table is read without one.'
          : 'Air temperature, its range, moisture, wind and haze are those of that climate in this month.',
      ];
    case 'altitude':
      return altitudeWords(a.site, b.site, units);
    case 'hood':
      return [
        `The hood stands ${formatQuantity('smallLength', b.site.box.hood?.gapM ?? a.site.box.hood?.gapM ?? 0, units)} off front, sides and lid, and is open at the top.`,
        same,
      ];
    default:
      return [same];
  }
}

function altitudeWords(a: Site, b: Site, units: UnitSystem): string[] {
  const kPa = (site: Site) => `${(pressureAtAltitude(site.place.altitudeM) / 1000).toFixed(1)} kPa`;
  const sun =
    resolvedClearDay(a) === null
      ? 'The sun is that of the tabulated day at both.'
      : 'The clear sky is computed for each altitude: less air, more direct sun.';
  const high = formatQuantity('length', b.place.altitudeM, units, 0);
  return [
    `The pressure is ${kPa(a)} and ${kPa(b)}: thinner air carries heat away worse and radiates less.`,
    sun,
    `The air temperature is kept, because the climate names it: at ${high} the air itself would as a rule be different.`,
  ];
}

const isCycle = (name: string): boolean => STANDARD_CYCLES.some((cycle) => cycle.name === name);

const percent = (share: number): string => `${Math.round(share * 100)} %`;

function finishWords({ to, state }: { to: keyof typeof FINISHES; state: 'new' | 'weathered' }): string {
  const { label, [state]: surface } = FINISHES[to];
  return `${label}, ${state} (takes in ${percent(surface.solarAbsorptance)} of the sun)`;
}

/** The finish of a box by its name, where its figures are that finish's. */
function ownFinish({ box }: Site): string {
  const { finish, finishState: state, solarAbsorptance, emittance } = box;
  const surface = finish === null ? null : FINISHES[finish][state];
  if (finish !== null && surface?.solarAbsorptance === solarAbsorptance && surface.emittance === emittance) {
    return finishWords({ to: finish, state });
  }
  return `the finish that it has (takes in ${percent(solarAbsorptance)} of the sun)`;
}

function hoodWords(to: keyof typeof FINISHES): string {
  return `a hood in ${FINISHES[to].label}, weathered`;
}

const eaveWords = (
  { depthM, heightAboveBoxM }: { depthM: number; heightAboveBoxM: number },
  units: UnitSystem,
): string =>
  `an eave ${formatQuantity('length', depthM, units)} deep, ${formatQuantity('length', heightAboveBoxM, units)} above the box`;

function screenWords(transmittance: number, units: UnitSystem): string {
  const size = `${formatQuantity('length', SCREEN.heightM, units)} high, ${formatQuantity('length', SCREEN.distanceM, units)} before the wall`;
  const light = transmittance === 0 ? 'solid' : `letting ${percent(transmittance)} of the light through`;
  return `a screen ${size}, ${light}`;
}

const powerWords = (powerW: number, units: UnitSystem): string => `${formatQuantity('power', powerW, units)} inside`;

function windOf(site: Site): number {
  return resolvedClearDay(site)?.windMs ?? site.climate.windMs ?? 0;
}

const windWords = (windMs: number, units: UnitSystem): string =>
  windMs === 0 ? 'calm air' : `a free wind of ${formatQuantity('speed', windMs, units)}`;

function ownClimate(site: Site): string {
  const { sample, cycle } = site.climate;
  const name = sample ?? cycle;
  return name === undefined ? 'the climate that the site has' : climateTitle(name);
}
