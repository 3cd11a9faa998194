/** What holds for every address of a screening: the hot day, and the box. Each has a usual value. */
import { useId, useState } from 'preact/hooks';
import { CLIMATE_SAMPLES, STANDARD_CYCLES } from '../../model/index.ts';
import { isDraft } from '../site/draft.ts';
import { resumedCopy } from '../sites/working-copies.ts';
import type { Settings } from './api.ts';

const ASSUMED = '';
/** No sample has such a name. */
const WEATHER = '*weather';

type BoxChoice = 'usual' | 'form' | 'file';

export interface SettingsState {
  readonly settings: Settings;
  readonly climate: string;
  readonly box: BoxChoice;
  readonly file: { readonly name: string; readonly site: unknown } | null;
  readonly refused: string;
  setClimate(climate: string): void;
  setBox(box: BoxChoice): void;
  setFile(file: File): void;
}

export function useSettings(): SettingsState {
  const [climate, setClimate] = useState(ASSUMED);
  const [box, setBox] = useState<BoxChoice>('usual');
  const [file, setFile] = useState<SettingsState['file']>(null);
  const [refused, setRefused] = useState('');
  const site = box === 'form' ? formSite() : box === 'file' ? file?.site : undefined;
  return {
    settings: {
      ...(climate === WEATHER ? { weather: true } : climate !== ASSUMED && { climate }),
      ...(site !== undefined && site !== null && { site }),
    },
    climate,
    box,
    file,
    refused,
    setClimate,
    setBox,
    async setFile(chosen) {
      const read: unknown = await chosen
        .text()
        .then(JSON.parse)
        .catch(() => null);
      if (isDraft(read)) setFile({ name: chosen.name, site: read });
      setRefused(isDraft(read) ? '' : `${chosen.name} holds no site.`);
    },
  };
}

/** The site that the view of one site has in its form; null where nobody has entered one. */
const formSite = () => resumedCopy()?.draft ?? null;

export function SettingsFields({ state }: { state: SettingsState }) {
  const id = useId();
  const inForm = formSite();
  const title = typeof inForm?.['title'] === 'string' && inForm['title'] !== '' ? `“${inForm['title']}”` : '';
  return (
    <details class="area-settings">
      <summary>
        <h3>Hot day and box</h3> <span class="gist">{gistOf(state)}</span>
      </summary>
      <div class="section-fields">
        <div class="field field-wide">
          <label for={`${id}-climate`}>The hot day to judge by</label>
          <select
            id={`${id}-climate`}
            value={state.climate}
            onChange={({ currentTarget }) => state.setClimate(currentTarget.value)}
          >
            <option value={ASSUMED}>What a row says; else assumed from latitude and altitude</option>
            <option value={WEATHER}>The nearest weather file in the data folder of the server</option>
            <optgroup label="Invented climates">
              {CLIMATE_SAMPLES.map(({ name, title: text }) => (
                <option key={name} value={name}>
                  {text}
                </option>
              ))}
            </optgroup>
            <optgroup label="Cycles of standards">
              {STANDARD_CYCLES.map(({ name, title: text }) => (
                <option key={name} value={name}>
                  {text}
                </option>
              ))}
            </optgroup>
          </select>
          <p class="field-hint">A row that brings a climate or a design temperature of its own is judged by that.</p>
        </div>
        <fieldset class="field field-wide choices">
          <legend>The box, its limits and what is known of the walls</legend>
          <label class="choice">
            <input
              type="radio"
              name={`${id}-box`}
              checked={state.box === 'usual'}
              onChange={() => state.setBox('usual')}
            />
            <span>Usual values; the results list them</span>
          </label>
          {inForm !== null && (
            <label class="choice">
              <input
                type="radio"
                name={`${id}-box`}
                checked={state.box === 'form'}
                onChange={() => state.setBox('form')}
              />
              <span>Those of the site {title} in the form of “One site”</span>
            </label>
          )}
          <label class="choice">
            <input
              type="radio"
              name={`${id}-box`}
              checked={state.box === 'file'}
              onChange={() => state.setBox('file')}
            />
            <span>Those of a site file{state.file && `: ${state.file.name}`}</span>
          </label>
          {state.box === 'file' && (
            <label class="button" for={`${id}-file`}>
              Open a site file
              <input
                id={`${id}-file`}
                type="file"
                accept=".json,application/json"
                onChange={({ currentTarget }) => {
                  const chosen = currentTarget.files?.[0];
                  if (chosen) state.setFile(chosen);
                  currentTarget.value = '';
                }}
              />
            </label>
          )}
          <p class="field-problem" role="status">
            {state.refused}
          </p>
        </fieldset>
      </div>
    </details>
  );
}

function gistOf({ climate, box }: SettingsState): string {
  const named = [...CLIMATE_SAMPLES, ...STANDARD_CYCLES].find(({ name }) => name === climate)?.title;
  const day = climate === WEATHER ? 'nearest weather file' : (named ?? 'day of the row, or assumed');
  return `${day}; ${{ usual: 'usual box', form: 'box of the site in the form', file: 'box of a site file' }[box]}`;
}
