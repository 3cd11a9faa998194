import type { Site } from '../site.ts';
import type { Ranking, RankOptions } from './results.ts';

export function rankWalls(_site: Site, _options: RankOptions = {}): Ranking {
  throw new Error('being built');
}
