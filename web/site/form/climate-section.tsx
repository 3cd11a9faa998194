/** The hot day that the site is judged on: an invented climate, a person's own figures, or a standard's cycle. */
import { useRef } from 'preact/hooks';
import { CLIMATE_SAMPLES, STANDARD_CYCLES } from '../../../model/index.ts';
import type { SiteResult } from '../../compute/protocol.ts';
import { type Draft, isDraft, textAt, valueAt } from '../draft.ts';
import { ColdNightFields } from './cold-night-fields.tsx';
import { useForm } from './form-context.ts';
import { MONTHS } from './months.ts';
import { NumberField } from './number-field.tsx';
import { Section } from './section.tsx';
import { ChoiceField, TextField } from './text-field.tsx';

const KINDS = [
  { kind: 'sample', label: 'Invented climate', gist: 'invented climate' },
  { kind: 'designDay', label: 'My own figures', gist: 'own figures' },
  { kind: 'cycle', label: 'Cycle of a standard', gist: 'standard cycle' },
] as const;

type ClimateKind = (typeof KINDS)[number]['kind'];

export function ClimateSection({ result }: { result: SiteResult | null }) {
  const { draft, set } = useForm();
  const setAside = useRef<Partial<Record<ClimateKind, Draft>>>({});
  const kind = kindOf(draft);

  const choose = (next: ClimateKind) => {
    const current = valueAt(draft, 'climate');
    if (isDraft(current) && kind !== null) setAside.current[kind] = current;
    // The wind's direction and the cold night go with every kind of hot day.
    const kept = Object.fromEntries(SHARED.map((key) => [key, valueAt(draft, `climate.${key}`)]));
    set('climate', withoutEmpty({ ...(setAside.current[next] ?? start(next, result)), ...kept }));
  };

  return (
    <Section title="Climate" gist={gistOf(draft, kind)} path="climate">
      <fieldset class="field field-wide choices">
        <legend>The hot day to judge by</legend>
        {KINDS.map((choice) => (
          <label key={choice.kind} class="choice">
            <input
              type="radio"
              name="climate-kind"
              checked={kind === choice.kind}
              onChange={() => choose(choice.kind)}
            />
            <span>{choice.label}</span>
          </label>
        ))}
      </fieldset>
      {kind === 'sample' && <SampleFields />}
      {kind === 'designDay' && <DesignDayFields />}
      {kind === 'cycle' && <CycleFields />}
      <NumberField path="climate.windFromDeg" />
      <ColdNightFields />
    </Section>
  );
}

/** Fields of the climate that do not belong to one kind of it. */
const SHARED = ['windFromDeg', 'coldNight'];

function withoutEmpty(climate: Draft): Draft {
  return Object.fromEntries(Object.entries(climate).filter(([, value]) => value !== undefined));
}

function SampleFields() {
  const { draft, set } = useForm();
  const sample = CLIMATE_SAMPLES.find(({ name }) => name === valueAt(draft, 'climate.sample'));
  return (
    <>
      <ChoiceField
        path="climate.sample"
        label="Climate"
        options={CLIMATE_SAMPLES.map(({ name, title }) => ({ value: name, label: title }))}
      >
        {sample && `${sample.note} Origin: ${sample.origin}.`}
      </ChoiceField>
      <ChoiceField
        path="climate.month"
        label="Month"
        options={[{ value: '', label: 'the hottest' }, ...MONTHS]}
        onChoose={(month) => set('climate.month', month === '' ? undefined : Number(month))}
      />
    </>
  );
}

function DesignDayFields() {
  return (
    <>
      <TextField path="climate.designDay.date" label="Date, for the path of the sun" type="date" />
      <NumberField path="climate.designDay.maxC" />
      <NumberField path="climate.designDay.dailyRangeK" />
      <NumberField path="climate.designDay.dewPointC" />
      <NumberField path="climate.designDay.windMs" />
      <NumberField path="climate.designDay.linkeTurbidity" />
    </>
  );
}

function CycleFields() {
  const { draft } = useForm();
  const cycle = STANDARD_CYCLES.find(({ name }) => name === valueAt(draft, 'climate.cycle'));
  return (
    <>
      <ChoiceField
        path="climate.cycle"
        label="Cycle"
        options={STANDARD_CYCLES.map(({ name, title }) => ({ value: name, label: title }))}
      >
        {cycle && `${cycle.note} Origin: ${cycle.origin}. How sure: ${cycle.status}.`}
      </ChoiceField>
      <TextField path="climate.date" label="Date, for the path of the sun (optional)" type="date" />
      <NumberField path="climate.windMs" />
    </>
  );
}

function kindOf(draft: Draft): ClimateKind | null {
  return KINDS.find(({ kind }) => valueAt(draft, `climate.${kind}`) !== undefined)?.kind ?? null;
}

/** What a kind of climate starts with; a person's own figures start from the day on the page. */
function start(kind: ClimateKind, result: SiteResult | null): Draft {
  if (kind === 'sample') return { sample: CLIMATE_SAMPLES[0]?.name };
  if (kind === 'cycle') return { cycle: STANDARD_CYCLES[0]?.name };
  if (result === null) return { designDay: {} };
  return { designDay: { date: result.ranking.date, maxC: Number(result.day.peakOutsideAirC.toFixed(1)) } };
}

function gistOf(draft: Draft, kind: ClimateKind | null): string {
  if (kind === 'sample') {
    const name = valueAt(draft, 'climate.sample');
    return CLIMATE_SAMPLES.find((sample) => sample.name === name)?.title ?? textAt(draft, 'climate.sample');
  }
  if (kind === 'cycle') {
    const name = valueAt(draft, 'climate.cycle');
    return STANDARD_CYCLES.find((cycle) => cycle.name === name)?.title ?? textAt(draft, 'climate.cycle');
  }
  return KINDS.find((choice) => choice.kind === kind)?.gist ?? '';
}
