/** The door for a weather file of the person's own. */
import { FileDrop } from '../../file-drop.tsx';

export function WeatherFile({ chosen, choose }: { chosen: string | null; choose(file: File): void }) {
  return (
    <FileDrop
      label={chosen === null ? 'Choose a weather file' : 'Choose another weather file'}
      accept=".epw,.csv,.txt,text/csv"
      choose={choose}
    >
      or drop one here: EPW, TMY3 csv, or a typical year of PVGIS as csv. It is read in this browser and never leaves
      it.{' '}
      {chosen !== null && (
        <>
          Chosen: <b>{chosen}</b>
        </>
      )}
    </FileDrop>
  );
}
