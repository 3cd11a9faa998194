/** What is computed after the ranking, one thing after the other, and what is said about it. */
import type {
  ChoiceConfidence,
  ColdResult,
  RemedyList,
  Site,
  UnitSystem,
  WallConfidence,
  WorstMonth,
} from '../../model/index.ts';

/** Everything that follows a ranking, in the order in which it is computed. */
export interface FollowUps {
  readonly cold: ColdResult;
  readonly remedies: RemedyList;
  /** The same for the first wall of the ranking, where it will not do as it stands; null where it will. */
  readonly wayOut: RemedyList | null;
  /** The month that is worse for the first wall than that of the design day; null where none is or months are not known. */
  readonly months: WorstMonth | null;
  readonly choice: ChoiceConfidence;
  readonly confidence: WallConfidence;
}

export type FollowUpKind = keyof FollowUps;

export interface FollowUpRequest {
  /** Parsed by the computation before. */
  readonly site: Site;
  readonly wall: string;
  /** The first wall of the ranking. */
  readonly first: string;
  /** Whether that one will do as it stands. */
  readonly withinLimits: boolean;
  readonly units: UnitSystem;
}

/** How far one of them is. */
export type FollowUpState<Kind extends FollowUpKind> =
  | { readonly phase: 'waiting' }
  | { readonly phase: 'running'; readonly share: number }
  | { readonly phase: 'done'; readonly result: FollowUps[Kind] }
  | { readonly phase: 'failed'; readonly message: string };

export type FollowUpReply = {
  [Kind in FollowUpKind]: { readonly kind: Kind; readonly state: FollowUpState<Kind> };
}[FollowUpKind];
