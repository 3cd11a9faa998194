/** The walls, best first. */
import {
  coldDecides,
  compassPoint,
  decidingFigure,
  type Finding,
  formatQuantity,
  type RankedWall,
  type Site,
  SUNSHINE,
  type UnitSystem,
} from '../../model/index.ts';
import type { SiteResult } from '../compute/protocol.ts';
import { placeClock } from './place-clock.ts';
import { hoursText, marginText, unbroken } from './words.ts';

interface WallRankingProps {
  readonly result: SiteResult;
  readonly units: UnitSystem;
  /** The wall whose day is shown. */
  readonly chosen: string | null;
  choose(wall: string): void;
}

export function WallRanking({ result, units, chosen, choose }: WallRankingProps) {
  const { ranking, site } = result;
  return (
    <section class="ranking" aria-labelledby="ranking-heading">
      <h2 id="ranking-heading">The walls, best first</h2>
      <fieldset class="bare">
        <legend class="visually-hidden">Choose the wall whose day is shown below</legend>
        <ol class="wall-cards">
          {ranking.walls.map((wall) => (
            <li key={wall.name}>
              <WallCard
                wall={wall}
                limits={site.limits}
                units={units}
                timeZone={ranking.timeZone}
                chosen={wall.name === chosen}
                choose={() => choose(wall.name)}
              />
            </li>
          ))}
        </ol>
      </fieldset>
    </section>
  );
}

interface WallCardProps {
  readonly wall: RankedWall;
  readonly limits: Site['limits'];
  readonly units: UnitSystem;
  readonly timeZone: string;
  readonly chosen: boolean;
  choose(): void;
}

function WallCard({ wall, limits, units, timeZone, chosen, choose }: WallCardProps) {
  const { day } = wall;
  const temperature = (celsius: number) => formatQuantity('temperature', celsius, units);
  const { name, valueC, isInsidePeak } = decidingFigure(day, limits);
  const figures = [
    ...(isInsidePeak ? [] : [[name, temperature(valueC), ''] as const]),
    ['Peak inside', temperature(day.peakInsideAirC), `at ${placeClock(timeZone).time(day.peakAtUtc)}`],
    ['Margin', marginText(day, units), ''],
    [coldDecides(day) ? 'Over the upper limit' : 'Over the limit', hoursText(day.hoursOverLimit), ''],
    ['Direct sun', hoursText(day.sunHours), `(${SUNSHINE.split(' of ')[1]})`],
  ] as const;
  return (
    <article class={chosen ? 'wall-card wall-chosen' : 'wall-card'}>
      <label class="wall-head">
        <input type="radio" name="shown-wall" checked={chosen} onChange={choose} />
        <span class="wall-rank">{wall.rank}</span>
        <span class="wall-name">{wall.name}</span>
        <span class="wall-facing">
          <FacingArrow azimuthDeg={wall.azimuthDeg} /> faces {compassPoint(wall.azimuthDeg)},{' '}
          {formatQuantity('bearing', wall.azimuthDeg, units)}
        </span>
        {!wall.feasible && <span class="badge badge-barred">✕ not allowed</span>}
      </label>
      <dl class="wall-figures">
        {figures.map(([term, value, when]) => (
          <div key={term}>
            <dt>{term}</dt>
            <dd>
              <b>{value}</b> {when}
            </dd>
          </div>
        ))}
      </dl>
      <p class="wall-reason">{unbroken(wall.reason)}</p>
      <Findings wall={wall} />
    </article>
  );
}

/** What bars or might bar the wall shows; what is in order or can wait for the visit is folded. */
function Findings({ wall: { name, findings } }: { wall: RankedWall }) {
  const first = findings.filter(({ status, hard }) => status === 'fail' || (hard && status === 'look'));
  const others = findings.filter((finding) => !first.includes(finding));
  const passed = others.filter(({ status }) => status === 'pass').length;
  const gist = [
    `${passed} passed`,
    ...(passed < others.length ? [`${others.length - passed} to look at on site`] : []),
  ];
  return (
    <>
      {first.length > 0 && <FindingList findings={first} label={`Checks of ${name} that matter first`} />}
      {others.length > 0 && (
        <details class="more">
          <summary>
            {first.length > 0 ? 'Other checks' : 'Checks'}: {gist.join(', ')}
          </summary>
          <FindingList findings={others} label={`Other checks of ${name}`} />
        </details>
      )}
    </>
  );
}

function FindingList({ findings, label }: { findings: readonly Finding[]; label: string }) {
  return (
    <ul class="findings" aria-label={label}>
      {findings.map((finding) => (
        <FindingLine key={finding.check} finding={finding} />
      ))}
    </ul>
  );
}

const STATUS: Record<Finding['status'], { mark: string; word: string }> = {
  pass: { mark: '✓', word: 'Pass' },
  look: { mark: '?', word: 'Look on site' },
  fail: { mark: '✕', word: 'Fail' },
};

function FindingLine({ finding }: { finding: Finding }) {
  const { mark, word } = STATUS[finding.status];
  return (
    <li class={`finding finding-${finding.status}`}>
      <span class="finding-mark" aria-hidden="true">
        {mark}
      </span>
      <span>
        <b>{word}:</b> {unbroken(finding.text)}
        {finding.status === 'fail' && <span class="origin"> ({finding.origin})</span>}
      </span>
    </li>
  );
}

/** Where a wall looks, north up. */
function FacingArrow({ azimuthDeg }: { azimuthDeg: number }) {
  return (
    <svg class="facing-arrow" viewBox="-10 -10 20 20" width="22" height="22" aria-hidden="true">
      <circle r="9" fill="none" stroke="currentColor" />
      <path d="M0-8 4 3 0 1-4 3z" fill="currentColor" transform={`rotate(${azimuthDeg})`} />
    </svg>
  );
}
