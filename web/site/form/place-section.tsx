import { useMemo } from 'preact/hooks';
import { textAt, valueAt } from '../draft.ts';
import { shortQuantity } from '../quantity-text.ts';
import { DeviceLocation } from './device-location.tsx';
import { useForm } from './form-context.ts';
import { NumberField } from './number-field.tsx';
import { Section } from './section.tsx';
import { TextField } from './text-field.tsx';

const ZONE_LIST = 'time-zones';

export function PlaceSection({ zoneOfCoordinates }: { zoneOfCoordinates: string | null }) {
  const { draft, units, set } = useForm();
  const zones = useMemo(() => Intl.supportedValuesOf('timeZone'), []);
  const entered = textAt(draft, 'place.timeZone');

  const gist = ['latitudeDeg', 'longitudeDeg', 'altitudeM']
    .map((key) => valueAt(draft, `place.${key}`))
    .flatMap((value, index) =>
      typeof value === 'number' ? [shortQuantity(value, index === 2 ? 'length' : 'angle', units)] : [],
    )
    .join(', ');

  return (
    <Section title="Place" gist={gist} path="place">
      <TextField path="title" label="Title of the site" />
      <DeviceLocation />
      <NumberField path="place.latitudeDeg" />
      <NumberField path="place.longitudeDeg" />
      <NumberField path="place.altitudeM" />
      <TextField
        path="place.timeZone"
        label="Time zone"
        list={ZONE_LIST}
        placeholder={zoneOfCoordinates ?? ''}
        help="For the clock times. Empty: looked up from the coordinates."
      >
        {entered !== '' && zoneOfCoordinates !== null && entered !== zoneOfCoordinates && (
          <>
            The coordinates lie in {zoneOfCoordinates}.{' '}
            <button type="button" class="small-button" onClick={() => set('place.timeZone', undefined)}>
              Use that
            </button>
          </>
        )}
      </TextField>
      <datalist id={ZONE_LIST}>
        {zones.map((zone) => (
          <option key={zone} value={zone} />
        ))}
      </datalist>
    </Section>
  );
}
