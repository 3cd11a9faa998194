/** The declination at the place of the site; the magnetic model is fetched when somebody first needs it. */
import { useEffect, useState } from 'preact/hooks';
import { type Declination, declinationAt } from './declination.ts';
import { useMagneticPlace } from './magnetic-place.ts';

export interface DeclinationInPage {
  /** Null until it is known. */
  readonly known: Declination | null;
  /** Why it is not; empty where it is, or is on its way. */
  readonly failure: string;
}

const NONE: DeclinationInPage = { known: null, failure: '' };
const NO_PLACE = 'Enter latitude and longitude first: the declination depends on the place.';

export function useDeclination(needed: boolean): DeclinationInPage {
  const place = useMagneticPlace();
  const [found, setFound] = useState<DeclinationInPage>(NONE);
  const { latitudeDeg, longitudeDeg, altitudeM } = place ?? {};
  useEffect(() => {
    if (!needed) return;
    if (latitudeDeg === undefined || longitudeDeg === undefined || altitudeM === undefined) {
      setFound({ known: null, failure: NO_PLACE });
      return;
    }
    let gone = false;
    const tell = (next: DeclinationInPage) => {
      if (!gone) setFound(next);
    };
    declinationAt({ latitudeDeg, longitudeDeg, altitudeM }, new Date()).then(
      (known) => tell({ known, failure: '' }),
      (error: Error) => tell({ known: null, failure: error.message }),
    );
    return () => {
      gone = true;
    };
  }, [needed, latitudeDeg, longitudeDeg, altitudeM]);
  return found;
}
