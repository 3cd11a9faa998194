/** The door for a weather file of the person's own: a place to drop it, and a button. */
import { useId, useState } from 'preact/hooks';

export function WeatherFile({ chosen, choose }: { chosen: string | null; choose(file: File): void }) {
  const inputId = useId();
  const [over, setOver] = useState(false);
  const drop = (event: DragEvent) => {
    event.preventDefault();
    setOver(false);
    const file = event.dataTransfer?.files[0];
    if (file) choose(file);
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: dropping is a short way to what the button does
    <div
      class={over ? 'file-drop file-drop-over' : 'file-drop'}
      onDragOver={(event) => {
        event.preventDefault();
        setOver(true);
      }}
      onDragLeave={() => setOver(false)}
      onDrop={drop}
    >
      <label class="button" for={inputId}>
        {chosen === null ? 'Choose a weather file' : 'Choose another weather file'}
        <input
          id={inputId}
          type="file"
          accept=".epw,.csv,.txt,text/csv"
          onChange={({ currentTarget }) => {
            const file = currentTarget.files?.[0];
            if (file) choose(file);
            // The same file can be chosen again after it was corrected.
            currentTarget.value = '';
          }}
        />
      </label>
      <span>
        {chosen === null ? 'or drop one here' : <b>{chosen}</b>}: EPW, TMY3 csv, or a typical year of PVGIS as csv. It
        is read in this browser and never leaves it.
      </span>
    </div>
  );
}
