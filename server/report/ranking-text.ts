/** The ranking as a person reads it in a terminal. */
import {
  cautionsAt,
  cautionsOfTheDay,
  clockTime,
  compassPoint,
  decidingMarginK,
  type FigureBesideInside,
  type Finding,
  figureBesideInside,
  formatQuantity,
  type RankedDays,
  type RankedWall,
  type Ranking,
  type Site,
  SUNSHINE,
  type UnitSystem,
} from '../../model/index.ts';
import { type Column, table } from '../terminal/table.ts';
import { wrap } from '../terminal/wrap.ts';
import { assumptionLines } from './assumption-lines.ts';
import { cautionLines } from './caution-lines.ts';
import { placeLines } from './place-lines.ts';

interface RankingWords {
  readonly units: UnitSystem;
  /** What goes below the decision, beside its grounds. */
  readonly more?: readonly string[];
}

/** Title, verdict, table of walls, a reason for each, assumptions and cautions, those of the first wall's day among them. */
export function rankingText(
  site: Site,
  { ranking, days, onDay }: RankedDays,
  { units, more = [] }: RankingWords,
): string {
  const first = days.get(ranking.walls[0]?.name ?? '');
  const here = first === undefined ? [] : cautionsOfTheDay(cautionsAt(site, first, units, onDay));
  const beside = figureBesideInside(
    ranking.walls.map(({ day }) => day),
    site.limits,
  );
  return [
    ...placeLines(site, ranking, units).map((line) => wrap(line)),
    '',
    ...verdictLines(ranking, more),
    '',
    table(ranking.walls, columns(ranking, beside, units)),
    '',
    wrap(
      'inside: highest air temperature in the box, and when by the local clock; ' +
        (beside === null ? '' : `${beside.legend}; `) +
        'margin: what is left to the upper limit, or to the lower one where that is passed; negative past it; ' +
        'over: hours above the limit; ' +
        `sun: hours of ${SUNSHINE} on the box.`,
    ),
    '',
    ...ranking.walls.flatMap(wallLines),
    '',
    'Assumed:',
    ...assumptionLines(ranking.assumptions),
    '',
    ...cautionLines(here),
  ].join('\n');
}

/** The decision, and below it what goes with it, each on lines of its own. */
export function verdictLines({ decision, grounds }: Ranking, more: readonly string[] = []): string[] {
  const told = [...grounds, ...more].filter((text) => text !== '');
  return [wrap(decision), ...told.map((text) => wrap(text, '  - '))];
}

function columns({ timeZone }: Ranking, beside: FigureBesideInside | null, units: UnitSystem): Column<RankedWall>[] {
  return [
    { head: '', text: ({ rank }) => String(rank) },
    { head: 'wall', align: 'left', shrinks: true, text: ({ name }) => name },
    { head: 'faces', text: ({ azimuthDeg }) => `${compassPoint(azimuthDeg)} ${bearing(azimuthDeg, units)}` },
    { head: 'inside', text: ({ day }) => formatQuantity('temperature', day.peakInsideAirC, units) },
    { head: 'at', text: ({ day }) => clockTime(day.peakAtUtc, timeZone) },
    ...(beside === null
      ? []
      : [
          {
            head: beside.head,
            text: ({ day }: RankedWall) => formatQuantity('temperature', beside.valueC(day), units),
          },
        ]),
    {
      head: 'margin',
      text: ({ day }) => formatQuantity('temperatureDifference', decidingMarginK(day), units),
    },
    { head: 'over', text: ({ day }) => hours(day.hoursOverLimit) },
    { head: 'sun', text: ({ day }) => hours(day.sunHours) },
    { head: 'checks', align: 'left', text: ({ findings }) => checks(findings) },
  ];
}

function wallLines(wall: RankedWall): string[] {
  // The reason of a wall that fails a check mostly quotes the check already.
  const told = ({ text }: Finding) => !wall.reason.includes(text);
  const failed = wall.findings.filter((finding) => finding.status === 'fail' && told(finding));
  const open = wall.findings.filter((finding) => finding.status === 'look').map(({ text }) => text);
  return [
    wrap(wall.reason, `${wall.rank} ${wall.name}: `, '    '),
    ...failed.map(({ text }) => wrap(text, '    fails: ', '      ')),
    ...(open.length === 0 ? [] : [wrap(open.join('; '), '    check on site: ', '      ')]),
  ];
}

function checks(findings: readonly Finding[]): string {
  const count = (status: Finding['status']) => findings.filter((finding) => finding.status === status).length;
  const parts = [
    { n: count('fail'), word: 'failed' },
    { n: count('look'), word: 'open' },
  ].filter(({ n }) => n > 0);
  if (findings.length === 0) return 'none';
  return parts.length === 0 ? 'passed' : parts.map(({ n, word }) => `${n} ${word}`).join(', ');
}

/** A bearing that rounds to 360 is north. */
function bearing(azimuthDeg: number, units: UnitSystem): string {
  return formatQuantity('bearing', Math.round(azimuthDeg) % 360, units);
}

function hours(value: number): string {
  return `${value.toFixed(1)} h`;
}
