/** The place of the site as far as the magnetic field and the sun ask for it. */
import { FIELDS } from '../../../model/index.ts';
import { valueAt } from '../draft.ts';
import { useForm } from '../form/form-context.ts';
import type { MagneticPlace } from './declination.ts';

/** Null while the form holds no coordinates that are good; those of a site that was there before do not stand in for them. */
export function useMagneticPlace(): MagneticPlace | null {
  const { draft, filled } = useForm();
  const number = (key: 'latitudeDeg' | 'longitudeDeg' | 'altitudeM', left: number | null) => {
    const entered = valueAt(draft, `place.${key}`);
    if (entered === undefined) return left;
    const { min, max } = FIELDS[`place.${key}`];
    // What is typed with a unit is read in the worker.
    return typeof entered === 'number' && entered >= min && entered <= max ? entered : (filled?.place[key] ?? null);
  };
  const [latitudeDeg, longitudeDeg] = [number('latitudeDeg', null), number('longitudeDeg', null)];
  if (latitudeDeg === null || longitudeDeg === null) return null;
  return { latitudeDeg, longitudeDeg, altitudeM: number('altitudeM', filled?.place.altitudeM ?? 0) ?? 0 };
}
