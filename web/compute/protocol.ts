/** What the page and its workers say to each other. Everything survives structured cloning, `Date`s included. */
import type {
  DayResult,
  Problem,
  Ranking,
  RosePoint,
  Site,
  SiteCautions,
  SunDiagram,
  UnitSystem,
  WallPlan,
} from '../../model/index.ts';

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
  /** What to mind at the wall of that day. */
  readonly cautions: SiteCautions;
}

export type ComputeReply =
  | { readonly id: number; readonly kind: 'result'; readonly result: SiteResult }
  | { readonly id: number; readonly kind: 'problems'; readonly problems: readonly Problem[] }
  | { readonly id: number; readonly kind: 'failed'; readonly message: string };

/** To the worker of the pictures: draw this, or stop; either ends what came before. */
export type PictureRequest =
  | { readonly id: number; readonly kind: 'draw'; readonly site: Site; readonly wall: string }
  | { readonly id: number; readonly kind: 'stop' };

/** What the worker of the pictures has so far: first what stands before the wall, at the end the rose. */
export type PictureReply =
  | { readonly id: number; readonly kind: 'view'; readonly diagram: SunDiagram; readonly plan: WallPlan }
  /** Share of the rose that is done, 0 to 1. */
  | { readonly id: number; readonly kind: 'progress'; readonly done: number }
  | { readonly id: number; readonly kind: 'rose'; readonly points: readonly RosePoint[] }
  | { readonly id: number; readonly kind: 'failed'; readonly message: string };
