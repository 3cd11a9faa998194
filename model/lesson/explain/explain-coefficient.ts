/** How well air takes heat off an open face. */
import { type Face, openFaces } from '../../faces.ts';
import { KELVIN } from '../../physical-constants.ts';
import type { PlayedDay } from '../../siting/played-day.ts';
import { boxShelter } from '../../siting/wind-shelter.ts';
import { pressureAtAltitude } from '../../solar/atmosphere.ts';
import { airProperties } from '../../thermal/air.ts';
import { flatPlateForced } from '../../thermal/forced-convection.ts';
import { covers } from '../../thermal/hood.ts';
import { rayleigh } from '../../thermal/natural-convection.ts';
import { naturalOf, sweptLengthM } from '../../thermal/outdoor-surface.ts';
import { type Explanation, explanation } from './explanation.ts';
import { call, power, product, quotient, sum } from './formula.ts';
import { nodeName } from './node-names.ts';

/** The faces that this can be said of: in the open and bare. */
export const bareFaces = ({ site: { box } }: PlayedDay): Face[] =>
  openFaces(box.mount).filter((face) => !covers(box.hood, face));

function around(played: PlayedDay, face: Face, step: number) {
  const surfaceK = (played.nodesC[face]?.[step] as number) + KELVIN;
  const airK = (played.result.outsideAirC[step] as number) + KELVIN;
  const air = airProperties((surfaceK + airK) / 2, pressureAtAltitude(played.site.place.altitudeM));
  return { surfaceK, airK, air };
}

/** Convection coefficient of a bare face: still air and wind together. */
export function explainCoefficient(played: PlayedDay, face: Face, step: number): Explanation {
  const { box } = played.site;
  const { surfaceK, airK, air } = around(played, face, step);
  const windMs = (played.weather[step]?.windMs ?? 0) * boxShelter(played.site, played.wall);
  const natural = naturalOf(face, box)(air, surfaceK, airK);
  const way = played.border.find(({ path, inner }) => path === 'convection' && inner === face);
  const upright = face !== 'top' && face !== 'bottom';
  return explanation({
    what: `coefficient:${face}`,
    title: `Convection coefficient of ${nodeName(face)}`,
    symbol: 'h',
    formula: call('cbrt', sum(power('h_n', 3), power('h_f', 3))),
    given: {
      h_n: ['coefficient in still air', natural, 'W/(m² K)', upright ? `stillAir:${face}` : undefined],
      h_f: [
        'coefficient of the wind along the face',
        flatPlateForced(air, windMs, sweptLengthM(face, box)),
        'W/(m² K)',
      ],
    },
    value: way?.coefficientWm2K?.[step] ?? 0,
    unit: 'W/(m² K)',
    source:
      'Incropera, Fundamentals of Heat and Mass Transfer (6th ed. 2007), section 9.9 for the blend, eq. 7.30 for the wind; still air: Churchill and Chu 1975 upright, McAdams 1954 level',
    note: 'Air at the mean of face and air temperature and at the pressure of the place; the march reads it from a table, within 0.1 %.',
    atUtc: played.result.stepsUtc[step] as Date,
    within: 0.01 * (way?.coefficientWm2K?.[step] ?? 0) + 0.01,
  });
}

/** Coefficient of an upright face in still air. */
export function explainStillAir(played: PlayedDay, face: Face, step: number): Explanation {
  const { heightM } = played.site.box;
  const { surfaceK, airK, air } = around(played, face, step);
  const value = naturalOf(face, played.site.box)(air, surfaceK, airK);
  const nusselt = power(sum(0.825, quotient(product(0.387, power('Ra', quotient(1, 6))), 'F')), 2);
  return explanation({
    what: `stillAir:${face}`,
    title: `Coefficient of ${nodeName(face)} in still air`,
    symbol: 'h_n',
    formula: product(quotient('k', 'L'), nusselt),
    given: {
      k: ['conductivity of the air', air.conductivityWmK, 'W/(m K)'],
      L: ['height of the face', heightM, 'm'],
      Ra: ['Rayleigh number: how strongly the warm air rises', rayleigh(air, surfaceK - airK, heightM), ''],
      F: ['function of the Prandtl number', air.plateFactor, ''],
    },
    value,
    unit: 'W/(m² K)',
    source: 'Churchill and Chu 1975, Int. J. Heat Mass Transfer 18:1323, eq. 9 (Incropera eq. 9.26)',
    atUtc: played.result.stepsUtc[step] as Date,
  });
}
