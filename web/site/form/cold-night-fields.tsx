/** The coldest night, for the lower limit; without it the model takes one from the climate. */
import { PartFields } from './part-fields.tsx';

/** A number to start from that is round in either unit, and that nobody mistakes for a figure of the place. */
const START = { minC: 0 };

export function ColdNightFields() {
  return (
    <PartFields
      path="climate.coldNight"
      label="I know the coldest night"
      start={START}
      keys={['minC', 'dewPointC', 'windMs', 'cloudFraction']}
      takenOut="The cold night was taken out."
    >
      Otherwise it is taken from the climate above.
    </PartFields>
  );
}
