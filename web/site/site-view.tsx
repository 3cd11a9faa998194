/** One site: the verdict, the ranked walls, the form, and what the forecast rests on. */
import { useEffect, useMemo, useState } from 'preact/hooks';
import { usualUnits } from '../../model/index.ts';
import { SitesPanel } from '../sites/sites-panel.tsx';
import type { ViewProps } from '../view-props.ts';
import { Advice, REMEDIES_HEADING } from './advice/advice.tsx';
import { useOrigins } from './advice/use-origins.ts';
import { BeforeYouClimb } from './before-you-climb.tsx';
import { DayPanel } from './day-panel.tsx';
import { textAt } from './draft.ts';
import { FORM_ID, type FormState } from './form/form-context.ts';
import { SiteForm } from './form/site-form.tsx';
import { Groundwork } from './groundwork.tsx';
import { WallPictures } from './pictures/wall-pictures.tsx';
import { ProblemList } from './problem-list.tsx';
import { problemsByPath, shownProblem } from './problems.ts';
import { SheetBar } from './sheet/sheet-bar.tsx';
import { SiteFiles } from './site-files.tsx';
import { useChosenWall } from './use-chosen-wall.ts';
import { useComputation } from './use-computation.ts';
import { useDraft } from './use-draft.ts';
import { useFollowUps } from './use-follow-ups.ts';
import { useLater } from './use-later.ts';
import { useNear } from './use-near.ts';
import { useSiteLink } from './use-site-link.ts';
import { goToVerdict, standing, Verdict, VerdictLine } from './verdict.tsx';
import { afterthoughts } from './verdict-after.ts';
import { WallRanking } from './wall-ranking.tsx';
import { YearSection } from './year/year-section.tsx';

export function SiteView({ chosenUnits, onUnits }: ViewProps) {
  const drafting = useDraft();
  const { draft, set } = drafting;
  const refusedLink = useSiteLink(drafting);
  const [zone, setZone] = useState(() => textAt(draft, 'place.timeZone'));
  const units = chosenUnits ?? usualUnits(zone);
  const [wall, setWall] = useChosenWall(drafting);
  const computation = useComputation(draft, units, wall);
  const { result, problems, failure } = computation;
  // The verdict and the walls come first; form and details follow a frame later.
  const later = useLater(result);
  const advice = useNear();
  const follow = useFollowUps(result, units, draft, advice.near);
  const originOf = useOrigins(follow.states, result, units);

  useEffect(() => onUnits(units), [units, onUnits]);
  const placeZone = result?.site.place.timeZone;
  useEffect(() => {
    if (placeZone !== undefined) setZone(placeZone);
  }, [placeZone]);

  const shownProblems = useMemo(
    () => problems.map((problem) => shownProblem(problem, draft, units)),
    [problems, draft, units],
  );
  // The choice shows at once; its day follows when it is computed.
  const chosen = result?.ranking.walls.find(({ name }) => name === wall)?.name ?? result?.day.wall ?? null;

  const toRemedies = () => {
    setWall(result?.ranking.walls[0]?.name ?? null);
    document.getElementById(REMEDIES_HEADING)?.focus();
  };
  const { removeEntry } = drafting;
  // The form is the largest part of the page, and stays as it is while results and progress come in.
  const siteForm = useMemo(() => {
    const form: FormState = {
      draft,
      units,
      set,
      problems: problemsByPath(shownProblems),
      filled: later?.site ?? null,
      toVerdict: goToVerdict,
    };
    const rename = (index: number, name: string) => {
      // The day on the page follows its wall through a change of name.
      if (wall !== null && wall === textAt(draft, `walls.${index}.name`)) setWall(name);
      set(`walls.${index}.name`, name);
    };
    const remove = (index: number) => {
      const name = textAt(draft, `walls.${index}.name`);
      removeEntry('walls', index, `Wall “${name}” was removed.`);
    };
    return <SiteForm form={form} result={later} rename={rename} remove={remove} />;
  }, [draft, units, set, removeEntry, shownProblems, later, wall, setWall]);

  // So do the other large parts, unless what they show has changed.
  const ranking = useMemo(
    () => result && <WallRanking result={result} units={units} chosen={chosen} choose={setWall} />,
    [result, units, chosen, setWall],
  );
  const dayPanels = useMemo(
    () =>
      later && (
        <>
          <DayPanel result={later} units={units} />
          <BeforeYouClimb {...later.cautions} />
        </>
      ),
    [later, units],
  );
  const yearPanels = useMemo(
    () =>
      later && (
        <>
          <YearSection result={later} units={units} chosen={chosen} choose={setWall} />
          <Groundwork assumptions={later.ranking.assumptions} />
        </>
      ),
    [later, units, chosen, setWall],
  );

  const after = originOf && result && afterthoughts(follow, result, originOf);
  return (
    <main class={`site-view site-${standing(computation)}`}>
      <a class="skip-link" href={`#${FORM_ID}`} onClick={skipToForm}>
        To the site form
      </a>
      <Verdict computation={computation} after={after} toRemedies={toRemedies} />
      <SheetBar
        draft={draft}
        wall={chosen === result?.ranking.walls[0]?.name ? null : chosen}
        units={units}
        cautions={result?.cautions ?? null}
        ready={result !== null && standing(computation) === 'current'}
      />
      <ProblemList problems={shownProblems} failure={failure} takeOut={(path) => set(path, undefined)} />
      <VerdictLine computation={computation} after={after} units={units} />
      <section class="site-entry" aria-labelledby="form-heading">
        <h2 id="form-heading">The site</h2>
        <p>Change anything: the result follows. Numbers may carry a unit, such as “12 in” or “46 °C”.</p>
        <SitesPanel
          drafting={drafting}
          verdict={standing(computation) === 'current' ? result?.ranking.verdict : ''}
          units={units}
        />
        <SiteFiles {...drafting} refusedLink={refusedLink} />
        {siteForm}
      </section>
      {ranking}
      {later && originOf && (
        <div class="details">
          {dayPanels}
          <div ref={advice.ref} class="advices">
            <Advice originOf={originOf} follow={follow} />
          </div>
          <WallPictures result={later} units={units} input={[draft, wall]} />
          {yearPanels}
        </div>
      )}
    </main>
  );
}

/** The hash of the address names the view, so a link within the page moves by itself. */
function skipToForm(event: Event) {
  event.preventDefault();
  document.getElementById(FORM_ID)?.focus();
}
