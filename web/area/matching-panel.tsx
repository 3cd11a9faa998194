/** Which column says what, what the first rows look like, what is wrong with them: all before anything runs. */
import { useEffect, useMemo, useState } from 'preact/hooks';
import { askFields, checkTable, type Field, type Matching, type Preview, startScreening, type Table } from './api.ts';
import { matched, missing, parted, rejectedWords } from './matching.ts';
import { PreviewTable, ProblemTable } from './preview-table.tsx';
import { Refusal, type Refused, refusedBy } from './refusal.tsx';
import { counted } from './run-words.ts';
import { SettingsFields, useSettings } from './settings-fields.tsx';
import { useHeading } from './use-heading.ts';

interface MatchingPanelProps {
  readonly table: Table;
  leave(): void;
  started(id: string): void;
}

const SEPARATORS: Readonly<Record<string, string>> = { ',': 'commas', ';': 'semicolons', '\t': 'tabs' };

export function MatchingPanel({ table, leave, started }: MatchingPanelProps) {
  const heading = useHeading();
  const [name, setName] = useState(table.name);
  const [fields, setFields] = useState<readonly Field[]>([]);
  const [refused, setRefused] = useState<Refused | null>(null);
  const [busy, setBusy] = useState(false);
  const { matching, preview, checking, set } = useMatching(table, setRefused);
  const settings = useSettings();
  useEffect(() => {
    askFields().then(setFields, (error: unknown) => setRefused(refusedBy(error)));
  }, []);
  // The order stays while somebody works down the list.
  const { here, others } = useMemo(() => parted(fields, table.matching), [fields, table]);
  const choosing = { columns: table.columns, matching, set };
  const lacking = missing(fields, matching);

  const run = async () => {
    setBusy(true);
    setRefused(null);
    try {
      const named = name.trim() === '' ? {} : { name: name.trim() };
      started(await startScreening({ ...named, table: table.table, matching, settings: settings.settings }));
    } catch (error) {
      setRefused(refusedBy(error));
      setBusy(false);
    }
  };
  return (
    <section class="matching" aria-labelledby="matching-heading">
      <h2 id="matching-heading" ref={heading} tabIndex={-1}>
        What the columns say
      </h2>
      <p>
        <b>{table.name}</b>: about {counted(table.rowsEstimated, 'row', 'rows')}, {table.columns.length} columns parted
        by {SEPARATORS[table.separator] ?? table.separator}, {table.encoding}.{' '}
        <button type="button" class="small-button" onClick={leave}>
          Take another table
        </button>
      </p>
      <div class="matching-parts">
        <div class="matching-fields">
          <FieldTable fields={here} caption="Fields and the columns that hold them" {...choosing} />
          {others.length > 0 && (
            <details>
              <summary>
                <h3>{others.length} further things that a table may say</h3>
              </summary>
              <FieldTable fields={others} caption="Further fields" {...choosing} />
            </details>
          )}
        </div>
        <div class="matching-seen">
          <h3>The first rows</h3>
          <PreviewTable columns={table.columns} matching={matching} preview={preview} />
          <h3>What would be rejected</h3>
          <p role="status">
            {checking
              ? 'Looking …'
              : lacking.length > 0
                ? `Nothing can be read without a column for the ${lacking.map(({ what }) => what.split(',')[0]).join(' and the ')}.`
                : `${rejectedWords(preview)} Rejected rows come as a file of their own.`}
          </p>
          {lacking.length === 0 && preview.problems.length > 0 && <ProblemTable problems={preview.problems} />}
        </div>
      </div>
      <SettingsFields state={settings} />
      <div class="field screening-title">
        <label for="screening-name">Name of the screening</label>
        <input
          id="screening-name"
          type="text"
          autocomplete="off"
          maxLength={200}
          value={name}
          onInput={({ currentTarget }) => setName(currentTarget.value)}
        />
      </div>
      <div class="area-go">
        <button
          type="button"
          class="next-button"
          disabled={busy || lacking.length > 0 || fields.length === 0}
          onClick={run}
        >
          Screen the table
        </button>
      </div>
      <Refusal refused={refused} />
    </section>
  );
}

interface FieldTableProps {
  readonly fields: readonly Field[];
  readonly caption: string;
  readonly columns: readonly string[];
  readonly matching: Matching;
  set(matching: Matching): void;
}

function FieldTable({ fields, caption, columns, matching, set }: FieldTableProps) {
  return (
    <table>
      <caption class="visually-hidden">{caption}</caption>
      <thead>
        <tr>
          <th scope="col">Of each address</th>
          <th scope="col">Column</th>
        </tr>
      </thead>
      <tbody>
        {fields.map(({ field, required, what }) => (
          <tr key={field}>
            <th scope="row">
              <label for={`match-${field}`}>
                {what} {required && <b class="required">required</b>}
              </label>
            </th>
            <td class="field">
              <select
                id={`match-${field}`}
                required={required}
                aria-invalid={required && (matching[field] ?? null) === null}
                value={matching[field] ?? ''}
                onChange={({ currentTarget }) => set(matched(matching, field, currentTarget.value || null))}
              >
                <option value="">{required ? 'choose a column' : 'not in this table'}</option>
                {columns.map((column) => (
                  <option key={column} value={column}>
                    {column}
                  </option>
                ))}
              </select>
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** The matching of the moment and the rows as it reads them; the newest answer counts. */
function useMatching(table: Table, refuse: (refused: Refused) => void) {
  const [matching, setMatching] = useState<Matching>(table.matching);
  const [preview, setPreview] = useState<Preview>(table);
  const [checking, setChecking] = useState(false);
  useEffect(() => {
    if (matching === table.matching) return;
    let gone = false;
    setChecking(true);
    checkTable(table.table, matching)
      .then(
        (check) => !gone && setPreview(check),
        (error: unknown) => !gone && refuse(refusedBy(error)),
      )
      .finally(() => !gone && setChecking(false));
    return () => {
      gone = true;
    };
  }, [matching, table, refuse]);
  return { matching, preview, checking, set: setMatching };
}
