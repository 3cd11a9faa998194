/** Everything that can be entered about a site, in the order of `steps.ts`. */
import type { SiteResult } from '../../compute/protocol.ts';
import { BoxSection } from './box-section.tsx';
import { BuildingSection } from './building-section.tsx';
import { ClimateSection } from './climate-section.tsx';
import { ConstraintsSection } from './constraints-section.tsx';
import { FORM_ID, FormContext, type FormState } from './form-context.ts';
import { GroundSection } from './ground-section.tsx';
import { LimitsSection } from './limits-section.tsx';
import { PlaceSection } from './place-section.tsx';
import { type WallActions, WallsSection } from './walls-section.tsx';

interface SiteFormProps extends WallActions {
  readonly form: FormState;
  readonly result: SiteResult | null;
}

export function SiteForm({ form, result, rename, remove }: SiteFormProps) {
  return (
    <FormContext.Provider value={form}>
      <form id={FORM_ID} tabIndex={-1} aria-labelledby="form-heading" onSubmit={(event) => event.preventDefault()}>
        <ol class="steps">
          <PlaceSection zoneOfCoordinates={result?.zoneOfCoordinates ?? null} />
          <ClimateSection result={result} />
          <BuildingSection />
          <WallsSection rename={rename} remove={remove} />
          <BoxSection />
          <LimitsSection />
          <ConstraintsSection />
          <GroundSection />
        </ol>
      </form>
    </FormContext.Provider>
  );
}
