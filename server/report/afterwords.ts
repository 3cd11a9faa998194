/** What takes longer than a ranking and goes below its decision. */
import {
  finished,
  monthSentence,
  type Ranking,
  type RankOptions,
  remediesFor,
  type Site,
  type UnitSystem,
  wayOutSentence,
  worstMonth,
} from '../../model/index.ts';

interface Asked extends Pick<RankOptions, 'rules'> {
  readonly units: UnitSystem;
}

/** Whether another month is worse for the wall to use, and what to do where no wall will do as it stands. */
export function afterwords(site: Site, ranking: Ranking, { units, rules }: Asked): string[] {
  const season = ranking.best === null ? '' : monthSentence(site, finished(worstMonth(site, ranking.best)), units);
  const first = ranking.walls[0];
  const wayOut =
    first === undefined || ranking.withinLimits
      ? ''
      : wayOutSentence(site, ranking, remediesFor(site, first.name, { units, rules }), units);
  return [season, wayOut];
}
