/** The door for a grid: its corners typed or pointed at on a map, its step, how many points that makes. */
import { useId, useState } from 'preact/hooks';
import type { UnitSystem } from '../../model/index.ts';
import { type Grid, startScreening } from './api.ts';
import { boxOfCorners, type GridText, readGrid, usualStepDeg } from './grid.ts';
import { AreaMap } from './map/area-map.tsx';
import { Refusal, type Refused, refusedBy } from './refusal.tsx';
import { counted } from './run-words.ts';
import { SettingsFields, useSettings } from './settings-fields.tsx';

const EMPTY: GridText = { south: '', west: '', north: '', east: '', stepDeg: '' };

const FIELDS: readonly { readonly key: keyof Grid; readonly label: string }[] = [
  { key: 'south', label: 'South' },
  { key: 'north', label: 'North' },
  { key: 'west', label: 'West' },
  { key: 'east', label: 'East' },
  { key: 'stepDeg', label: 'Step' },
];

export function GridDoor({ units, started }: { units: UnitSystem; started(id: string): void }) {
  const id = useId();
  const [text, setText] = useState(EMPTY);
  const [corner, setCorner] = useState<readonly [number, number] | null>(null);
  const [busy, setBusy] = useState(false);
  const [refused, setRefused] = useState<Refused | null>(null);
  const settings = useSettings();
  const { grid, points, problems } = readGrid(text);
  const box = boxIn(text);

  const point = (at: readonly [number, number] | null) => {
    if (at === null) return;
    if (corner === null) {
      setCorner(at);
      return;
    }
    const drawn = boxOfCorners(corner, at);
    const texts = Object.fromEntries(Object.entries(drawn).map(([key, value]) => [key, String(value)]));
    setText({ ...text, ...texts, stepDeg: String(usualStepDeg(drawn)) } as GridText);
    setCorner(null);
  };
  const run = async () => {
    if (grid === null) return;
    setBusy(true);
    setRefused(null);
    try {
      started(await startScreening({ grid, settings: settings.settings }));
    } catch (error) {
      setRefused(refusedBy(error));
      setBusy(false);
    }
  };
  return (
    <section class="grid-door" aria-labelledby={`${id}-heading`}>
      <h2 id={`${id}-heading`}>A grid over a region</h2>
      <p>
        Where there is no list yet: points at equal steps of latitude and longitude. Type the corners, or point at two
        opposite ones on the map.
      </p>
      <div class="grid-parts">
        <div class="grid-fields">
          {FIELDS.map(({ key, label }) => (
            <div class="field" key={key}>
              <label for={`${id}-${key}`}>{label}</label>
              <span class="field-entry">
                <input
                  id={`${id}-${key}`}
                  type="text"
                  inputMode="text"
                  autocomplete="off"
                  maxLength={20}
                  value={text[key]}
                  aria-invalid={problems[key] !== undefined}
                  aria-describedby={`${id}-${key}-problem`}
                  onInput={({ currentTarget }) => setText({ ...text, [key]: currentTarget.value })}
                />
                <span class="field-unit">°</span>
              </span>
              <p class="field-problem" id={`${id}-${key}-problem`}>
                {problems[key] !== undefined && `✕ ${problems[key]}`}
              </p>
            </div>
          ))}
          <p class="grid-count" role="status">
            {corner !== null
              ? 'One corner is set. Point at the opposite one.'
              : grid !== null
                ? counted(points, 'point', 'points')
                : 'Corners and step are needed.'}
          </p>
        </div>
        <AreaMap
          label={box === null ? 'Map of the world, no box drawn' : 'Map with the box of the grid'}
          points={null}
          units={units}
          box={box}
          corner={corner}
          onPoint={(_, at) => point(at)}
          enter="sets a corner at the cross"
        />
      </div>
      <SettingsFields state={settings} />
      <div class="area-go">
        <button type="button" class="next-button" disabled={grid === null || busy} onClick={run}>
          Screen the grid
        </button>
      </div>
      <Refusal refused={refused} />
    </section>
  );
}

/** The box as far as its corners are there, without a step. */
function boxIn(text: GridText): Omit<Grid, 'stepDeg'> | null {
  return readGrid({ ...text, stepDeg: '90' }).grid;
}
