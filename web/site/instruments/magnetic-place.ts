/** The place of the site as far as the magnetic field and the sun ask for it. */
import { FIELDS } from '../../../model/index.ts';
import { valueAt } from '../draft.ts';
import { useForm } from '../form/form-context.ts';
import type { MagneticPlace } from './declination.ts';

/** Null while the form holds no coordinates that are good. */
export function useMagneticPlace(): MagneticPlace | null {
  const { draft, filled } = useForm();
  const number = (key: 'latitudeDeg' | 'longitudeDeg' | 'altitudeM') => {
    const entered = valueAt(draft, `place.${key}`) ?? filled?.place[key] ?? 0;
    const { min, max } = FIELDS[`place.${key}`];
    return typeof entered === 'number' && entered >= min && entered <= max ? entered : (filled?.place[key] ?? null);
  };
  const [latitudeDeg, longitudeDeg, altitudeM] = [number('latitudeDeg'), number('longitudeDeg'), number('altitudeM')];
  if (latitudeDeg === null || longitudeDeg === null) return null;
  return { latitudeDeg, longitudeDeg, altitudeM: altitudeM ?? 0 };
}
