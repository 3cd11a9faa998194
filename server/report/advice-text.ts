/** The advice for one wall as a person reads it in a terminal. */
import {
  type ColdResult,
  type ColdState,
  type Effort,
  figureOf,
  formatQuantity,
  type InputWeight,
  leastEffortWords,
  monthSentence,
  type Ranking,
  type Remedy,
  type RemedyList,
  type Site,
  surenessSentence,
  type Touch,
  touchText,
  type UnitSystem,
  wayOutSentence,
} from '../../model/index.ts';
import type { Advice } from '../advice.ts';
import { type Column, table } from '../terminal/table.ts';
import { wrap } from '../terminal/wrap.ts';
import { assumptionLines } from './assumption-lines.ts';
import { cautionLines } from './caution-lines.ts';
import { placeLines } from './place-lines.ts';
import { verdictLines } from './ranking-text.ts';

interface Report {
  readonly advice: Advice;
  /** Of the same site, in the same units. */
  readonly ranking: Ranking;
  readonly units: UnitSystem;
}

/** Place, verdict, what would help, how sure it is, the coldest night, touch, assumptions and cautions. */
export function adviceText(site: Site, { advice, ranking, units }: Report): string {
  const { remedies, choice, cold, touch } = advice;
  const wall = ranking.walls.find(({ name }) => name === remedies.wall);
  return [
    ...placeLines(site, ranking, units).map((line) => wrap(line)),
    '',
    ...verdictLines(ranking, [
      monthSentence(site, advice.worstMonth, units),
      surenessSentence(choice, ranking),
      wayOut(site, { advice, ranking, units }),
    ]),
    '',
    wrap(`wall ${remedies.wall}`),
    '',
    wrap(wall?.reason ?? ''),
    '',
    'What would help:',
    ...remedyLines(site, remedies, units),
    '',
    'How sure it is:',
    ...confidenceLines(site, advice, units),
    '',
    'The coldest night:',
    ...coldLines(site, cold, units),
    '',
    'Touch:',
    wrap(touchLine(touch, units), '  '),
    '',
    'Assumed:',
    ...assumptionLines(ranking.assumptions),
    '',
    ...cautionLines(),
  ].join('\n');
}

/** Of the first wall of the ranking; what was tried on another one says nothing of it. */
function wayOut(site: Site, { advice: { remedies }, ranking, units }: Report): string {
  return remedies.wall === ranking.walls[0]?.name ? wayOutSentence(site, ranking, remedies, units) : '';
}

function remedyLines({ limits }: Site, list: RemedyList, units: UnitSystem) {
  const { remedies, bestPair, least, peakInsideAirC, marginK, assumption } = list;
  const figure = figureOf(list, limits);
  const decides = figure.isInsidePeak ? '' : `; ${figure.name.toLowerCase()} ${temperature(figure.valueC, units)}`;
  const now = `As it stands: ${temperature(peakInsideAirC, units)} inside at the peak${decides}, margin ${difference(marginK, units)}.`;
  const shown = bestPair === null ? remedies : [...remedies, bestPair];
  const cautions = new Set(shown.map(({ caution }) => caution).filter((caution) => caution !== ''));
  return [
    wrap(now, '  '),
    '',
    table(remedies, remedyColumns(units)),
    '',
    wrap(
      `gain: ${gainWords(limits)}; peak: highest air temperature in the box; in limits: whether the box stays within its limits.`,
      '  ',
    ),
    wrap(
      bestPair === null ? 'No two permitted ones together gain more than the best alone.' : pairText(bestPair, units),
      '  ',
    ),
    ...(least === null ? [] : [wrap(leastText(list, least, units), '  ')]),
    ...[...cautions].map((caution) => wrap(caution, '  - ')),
    wrap(`Assumed: ${assumption}`, '  '),
  ];
}

/** Nothing changes the outside air: where the limits refer to it, a remedy leaves the margin as it is. */
function gainWords({ refersTo }: Site['limits']): string {
  return refersTo === 'outsideAir' ? 'by how much it cools the air inside' : 'what it adds to the margin';
}

function remedyColumns(units: UnitSystem): Column<Remedy>[] {
  return [
    { head: 'gain', text: ({ gainK }) => signed(gainK, units) },
    { head: 'peak', text: ({ peakInsideAirC }) => temperature(peakInsideAirC, units) },
    { head: 'margin', text: ({ marginK }) => difference(marginK, units) },
    { head: 'in limits', align: 'left', text: ({ withinLimits }) => (withinLimits ? 'yes' : 'no') },
    { head: 'hours', text: ({ effort }) => `${effort.hours} h` },
    { head: 'what, and with which parts', align: 'left', wraps: true, text: (remedy) => remedyText(remedy, units) },
  ];
}

function remedyText({ text, effort, permitted, gainK }: Remedy, units: UnitSystem): string {
  const marks = [
    ...(permitted ? [] : ['NOT PERMITTED']),
    // What rounds to nothing is not called worse.
    ...(signed(gainK, units).startsWith('-') ? ['WORSE'] : []),
  ];
  return `${marks.length === 0 ? '' : `${marks.join(', ')}: `}${text} (${partsText(effort)})`;
}

function pairText({ text, effort, gainK, peakInsideAirC, marginK, withinLimits }: Remedy, units: UnitSystem): string {
  return (
    `The best two together: ${text}: gain ${signed(gainK, units)}, peak ${temperature(peakInsideAirC, units)}, ` +
    `margin ${difference(marginK, units)}, ${withinLimits ? 'within' : 'outside'} the limits; ${effort.hours} h, ${partsText(effort)}.`
  );
}

const leastText = (list: RemedyList, { text, effort, marginK }: Remedy, units: UnitSystem): string =>
  `What suffices ${leastEffortWords(list)}: ${text}: margin ${difference(marginK, units)}; ${effort.hours} h, ${partsText(effort)}.`;

const partsText = ({ parts }: Effort): string => (parts === 'none' ? 'no parts' : parts);

/** Fewer sets than this make poor tenths. */
const FEW_SETS = 10;

/** Inputs that weigh less than this are not told, and no more than so many. */
const LEAST_WEIGHT = 0.1;
const MOST_WEIGHTS = 5;

function confidenceLines(site: Site, { confidence, choice }: Advice, units: UnitSystem): string[] {
  const { p10, p50, p90 } = confidence.peakInsideAirC;
  const { samples } = confidence;
  const sets = `${samples} ${samples === 1 ? 'set' : 'sets'} of inputs`;
  const weights = confidence.weights
    .filter(({ rankCorrelation }) => Math.abs(rankCorrelation) >= LEAST_WEIGHT)
    .slice(0, MOST_WEIGHTS);
  const best = [...choice.walls].sort((a, b) => b.bestShare - a.bestShare);
  return [
    wrap(
      `Over ${sets} the air inside peaks at ${temperature(p50, units)} in the middle case; one in ten stays below ` +
        `${temperature(p10, units)}, nine in ten below ${temperature(p90, units)}.${samples < FEW_SETS ? ' So few sets say little.' : ''}`,
      '  ',
    ),
    wrap(
      `The upper limit of ${temperature(site.limits.maxC, units)} is passed in ${percent(confidence.chanceOverLimit)} of the sets.`,
      '  ',
    ),
    wrap(
      best.length === 0
        ? 'No wall is permitted, so none can be the coolest of them.'
        : `How often each permitted wall is the coolest: ${best.map(({ name, bestShare }) => `${name} ${percent(bestShare)}`).join(', ')}.`,
      '  ',
    ),
    ...(weights.length === 0
      ? []
      : [
          '',
          table(weights, WEIGHT_COLUMNS),
          '',
          wrap('weight: rank correlation with the peak, from -1 to 1; the more, the hotter; negative: cooler.', '  '),
        ]),
    wrap(`Assumed: ${confidence.assumption}`, '  '),
  ];
}

const WEIGHT_COLUMNS: Column<InputWeight>[] = [
  { head: '  weight', text: ({ rankCorrelation }) => rankCorrelation.toFixed(2) },
  { head: 'input, and how far it was moved', align: 'left', wraps: true, text: ({ text }) => text },
];

interface NamedState {
  readonly when: string;
  readonly state: ColdState;
}

function coldLines({ box, limits }: Site, cold: ColdResult, units: UnitSystem): string[] {
  const states: NamedState[] = [
    { when: '  running', state: cold.running },
    { when: '  after an outage', state: cold.soaked },
  ];
  const battery: Column<NamedState>[] =
    box.battery === null
      ? []
      : [
          {
            head: 'battery',
            text: ({ state }) => (state.batteryC === null ? '-' : temperature(state.batteryC, units)),
          },
        ];
  return [
    wrap(
      `${cold.text}${cold.origin === '' ? '' : ` (${cold.origin})`}: outside air ${temperature(cold.outsideAirC, units)}, ` +
        `dew point ${temperature(cold.dewPointC, units)}.`,
      '  ',
    ),
    '',
    table(states, [
      { head: '', align: 'left', text: ({ when }) => when },
      { head: 'inside', text: ({ state }) => temperature(state.insideAirC, units) },
      { head: 'electronics', text: ({ state }) => temperature(state.electronicsC, units) },
      ...battery,
      { head: 'coldest face', text: ({ state }) => temperature(state.lowestSkinC, units) },
      { head: 'margin', text: ({ state }) => difference(state.marginK, units) },
      { head: 'water', align: 'left', text: ({ state }) => (state.condenses ? 'yes' : 'no') },
    ]),
    '',
    wrap(
      `margin: above the lower limit of ${temperature(limits.minC, units)}; water: a face is below the dew point, so that water or ` +
        'frost settles on it. The night is taken as lasting until nothing changes any more, on the safe side.',
      '  ',
    ),
  ];
}

function touchLine(touch: Touch, units: UnitSystem): string {
  const caution = touchText(touch, units);
  if (caution !== '') return caution;
  return `The outside reaches ${temperature(touch.peakSkinC, units)} (${touch.face}): below what burns within a minute (ISO 13732-1, value from memory).`;
}

const temperature = (valueC: number, units: UnitSystem): string => formatQuantity('temperature', valueC, units);

const difference = (kelvins: number, units: UnitSystem): string =>
  formatQuantity('temperatureDifference', kelvins, units);

/** A gain with its sign; one decimal in either system, since whole degrees hide what sets remedies apart. */
function signed(kelvins: number, units: UnitSystem): string {
  const text = formatQuantity('temperatureDifference', kelvins, units, 1);
  return Number.parseFloat(text) > 0 ? `+${text}` : text;
}

/** What is rare is not told as never, nor what is frequent as always. */
function percent(share: number): string {
  const whole = Math.round(share * 100);
  if (whole === 0 && share > 0) return 'less than 1 %';
  if (whole === 100 && share < 1) return 'more than 99 %';
  return `${whole} %`;
}
