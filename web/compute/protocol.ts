/** What the page and the worker say to each other. Everything survives structured cloning, `Date`s included. */
import type { DayResult, Problem, Ranking, Site, UnitSystem } from '../../model/index.ts';

export interface ComputeRequest {
  readonly id: number;
  /** The site as it stands in the form; nothing about it is trusted. */
  readonly input: unknown;
  readonly units: UnitSystem;
  /** The wall whose day is wanted; the first of the ranking where null or unknown. */
  readonly wall: string | null;
}

/** Everything the page shows of one good input. */
export interface SiteResult {
  /** The site with the defaults filled in. */
  readonly site: Site;
  /** The zone that the coordinates lie in, whatever the site says. */
  readonly zoneOfCoordinates: string;
  readonly ranking: Ranking;
  readonly day: DayResult;
}

export type ComputeReply =
  | { readonly id: number; readonly kind: 'result'; readonly result: SiteResult }
  | { readonly id: number; readonly kind: 'problems'; readonly problems: readonly Problem[] }
  | { readonly id: number; readonly kind: 'failed'; readonly message: string };
