/** The decision in one sentence, and how far it can be relied on at this moment. */
import { useEffect, useState } from 'preact/hooks';
import {
  decidingFigure,
  formatQuantity,
  lowered,
  type UnitSystem,
  type WallStanding,
  wallStanding,
} from '../../model/index.ts';
import type { SiteResult } from '../compute/protocol.ts';
import { PROBLEMS_HEADING } from './problem-list.tsx';
import type { Computation } from './use-computation.ts';
import type { Afterthoughts } from './verdict-after.ts';
import { unbroken } from './words.ts';

const VERDICT_HEADING = 'verdict-heading';

/** How the result stands to the input. */
export type Standing = 'current' | 'outOfDate';

export function standing({ problems, failure, stopped }: Computation): Standing {
  return problems.length > 0 || failure !== null || stopped ? 'outOfDate' : 'current';
}

interface VerdictProps {
  readonly computation: Computation;
  /** Null while there is no ranking. */
  readonly after: Afterthoughts | null;
  /** To what would help on the wall that the verdict speaks of. */
  toRemedies(): void;
}

export function Verdict({ computation, after, toRemedies }: VerdictProps) {
  const { result, problems, slow, cancel, retry, stopped } = computation;
  const state = standing(computation);
  const fresh = state === 'current' ? after : null;
  const status = result === null ? null : statusOf(result, fresh);
  return (
    <section class={`verdict verdict-${status?.kind ?? 'none'} verdict-${state}`} aria-labelledby={VERDICT_HEADING}>
      <div class="verdict-status">
        <h1 id={VERDICT_HEADING} tabIndex={-1} class="visually-hidden">
          Verdict
        </h1>
        {state === 'outOfDate' ? (
          <p class="badge badge-stale">{outOfDateText(computation)}</p>
        ) : (
          status && (
            <p class={`badge badge-${status.kind}`}>
              <span aria-hidden="true">{status.mark}</span> {status.words}
            </p>
          )
        )}
        {slow && (
          <p class="slow">
            <progress aria-label="computing" /> Still computing
            {result && '; what you see is the result before the last change'}.
            <button type="button" class="small-button" onClick={cancel}>
              Stop
            </button>
          </p>
        )}
        {problems.length > 0 && (
          <button type="button" class="small-button" onClick={goToExplanation}>
            Show
          </button>
        )}
        {stopped && (
          <button type="button" class="small-button" onClick={retry}>
            Compute again
          </button>
        )}
      </div>
      {result === null ? (
        <p class="verdict-sentence">
          <strong>{withoutVerdict(computation)}</strong>
        </p>
      ) : (
        <VerdictText result={result} after={fresh} toRemedies={toRemedies} />
      )}
      <Announcer text={announcement(computation)} />
    </section>
  );
}

interface VerdictTextProps extends Pick<VerdictProps, 'after' | 'toRemedies'> {
  readonly result: SiteResult;
}

/** The decision itself stands out; what follows it explains. */
function VerdictText({ result: { ranking }, after, toRemedies }: VerdictTextProps) {
  return (
    <p class="verdict-sentence">
      <strong>{unbroken(ranking.decision)}</strong>{' '}
      {after !== null && after.wayOut !== '' && <span class="way-out">{unbroken(after.wayOut)} </span>}
      {after?.wayOutKnown && (
        <button type="button" class="small-button" onClick={toRemedies}>
          All that would help
        </button>
      )}
      {ranking.grounds.map((ground) => (
        <span key={ground} class="verdict-ground">
          {unbroken(ground)}{' '}
        </span>
      ))}
      {after !== null && after.season !== '' && <span class="verdict-ground">{unbroken(after.season)} </span>}
      {after !== null && after.sureness !== '' && <span class="verdict-ground">{unbroken(after.sureness)}</span>}
    </p>
  );
}

interface VerdictLineProps extends Pick<VerdictProps, 'computation' | 'after'> {
  readonly units: UnitSystem;
}

/** One line for the narrow page, where the verdict itself scrolls away while somebody types. */
export function VerdictLine({ computation, after, units }: VerdictLineProps) {
  const { result } = computation;
  const status = result && statusOf(result, after);
  const best = result?.ranking.walls[0];
  let line = '';
  if (standing(computation) === 'outOfDate') line = outOfDateText(computation);
  else if (status && best) {
    const { short, valueC } = decidingFigure(best.day, result.site.limits);
    // The wall comes early: what a narrow page cuts off is the end.
    line = `${status.mark} ${short} ${formatQuantity('temperature', valueC, units)} on ${best.name}: ${lowered(status.words)}`;
  }
  return (
    <button type="button" class="verdict-line" onClick={goToExplanation}>
      {line || 'To the verdict'}
    </button>
  );
}

/** To what is to be corrected, or else to the verdict in full. */
function goToExplanation() {
  const problems = document.getElementById(PROBLEMS_HEADING);
  if (problems === null) goToVerdict();
  else show(problems);
}

export function goToVerdict() {
  show(document.getElementById(VERDICT_HEADING));
}

function show(heading: HTMLElement | null) {
  heading?.focus();
  heading?.parentElement?.scrollIntoView({ block: 'center' });
}

interface Status {
  /** Its name in the style sheet. */
  readonly kind: 'good' | 'partly' | 'hot' | 'barred';
  readonly mark: string;
  readonly words: string;
}

const STATUS: Readonly<Record<WallStanding, Status>> = {
  within: { kind: 'good', mark: '✓', words: 'Within limits' },
  designDayOnly: { kind: 'partly', mark: '!', words: 'Within limits on the design day only' },
  beyond: { kind: 'hot', mark: '✕', words: 'Beyond limits' },
  barred: { kind: 'barred', mark: '✕', words: 'No wall qualifies' },
};

/** Of the first wall; other months count from when they are known. */
function statusOf({ ranking }: SiteResult, after: Afterthoughts | null): Status {
  const [first] = ranking.walls;
  if (ranking.best === null || first === undefined) return STATUS.barred;
  const { pastInColdestNight } = ranking;
  return STATUS[wallStanding(first, { month: after?.month ?? null, pastInColdestNight })];
}

function outOfDateText({ problems, failure, stopped, result }: Computation): string {
  const before = result === null ? '' : 'Out of date: ';
  if (problems.length > 0) return `${before}${problems.length === 1 ? '1 problem' : `${problems.length} problems`}`;
  if (failure !== null) return `${before}the computation failed`;
  return stopped ? `${before}the computation was stopped` : '';
}

function withoutVerdict({ problems, failure, stopped }: Computation): string {
  if (problems.length > 0) return 'No verdict yet: the site has problems.';
  if (failure !== null) return 'No verdict: the computation failed.';
  return stopped ? 'No verdict: the computation was stopped.' : 'Computing the hot day on every wall…';
}

function announcement(computation: Computation): string {
  if (standing(computation) === 'outOfDate') return outOfDateText(computation);
  return computation.result?.ranking.verdict ?? '';
}

/** Speech waits until somebody has stopped typing, or every keystroke would be talked over. */
const ANNOUNCE_MS = 1200;

function Announcer({ text }: { text: string }) {
  const [said, setSaid] = useState('');
  useEffect(() => {
    const timer = setTimeout(() => setSaid(text), ANNOUNCE_MS);
    return () => clearTimeout(timer);
  }, [text]);
  return (
    <p class="visually-hidden" role="status">
      {said}
    </p>
  );
}
