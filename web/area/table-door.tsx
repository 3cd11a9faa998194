/** The door for a table of addresses: dropped, chosen, or the example; with the progress of its upload. */
import { useEffect, useId, useRef, useState } from 'preact/hooks';
import { FileDrop } from '../file-drop.tsx';
import type { Table } from './api.ts';
import { EXAMPLE_NAME, exampleTable } from './example-table.ts';
import { Refusal, type Refused, refusedBy } from './refusal.tsx';
import { type Upload, uploadTable } from './upload.ts';

export function TableDoor({ uploaded }: { uploaded(table: Table): void }) {
  const id = useId();
  const [sending, setSending] = useState<{ name: string; share: number } | null>(null);
  const [refused, setRefused] = useState<Refused | null>(null);
  const upload = useRef<Upload | null>(null);
  useEffect(() => () => upload.current?.cancel(), []);

  const send = async (file: Blob, name: string) => {
    upload.current?.cancel();
    setRefused(null);
    setSending({ name, share: 0 });
    const started = uploadTable(file, name, (share) => setSending({ name, share }));
    upload.current = started;
    try {
      uploaded(await started.done);
    } catch (error) {
      if (upload.current !== started) return;
      setRefused(refusedBy(error));
    }
    if (upload.current === started) setSending(null);
  };

  return (
    <section aria-labelledby={`${id}-heading`}>
      <h2 id={`${id}-heading`}>A list of addresses</h2>
      <p>
        A table with a latitude and a longitude in each row (CSV; comma, semicolon or tab; decimal points). What else it
        may say of an address, such as bearings of walls, power or altitude, is matched in the next step.
      </p>
      <FileDrop
        label="Choose a table"
        accept=".csv,.tsv,.txt,text/csv,text/plain,text/tab-separated-values"
        choose={(file) => send(file, file.name)}
      >
        or drop one here
      </FileDrop>
      <p>
        <button type="button" onClick={() => send(new Blob([exampleTable()], { type: 'text/csv' }), EXAMPLE_NAME)}>
          Try with an example
        </button>
      </p>
      {sending && (
        <p class="area-progress">
          <progress
            aria-label={`Sending ${sending.name}`}
            value={sending.share > 0 && sending.share < 1 ? sending.share : undefined}
          />
          <span role="status">
            {sending.share < 1 ? `Sending ${sending.name}` : `${sending.name} is looked through`}
          </span>
          {sending.share < 1 && <span>{Math.round(sending.share * 100)}&nbsp;%</span>}
          <button type="button" class="small-button" onClick={() => upload.current?.cancel()}>
            Cancel
          </button>
        </p>
      )}
      <Refusal refused={refused} />
    </section>
  );
}
