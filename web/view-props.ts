import type { UnitSystem } from '../model/index.ts';

/** What the frame and a view tell each other. */
export interface ViewProps {
  /** The units a person chose; null where nobody chose. */
  readonly chosenUnits: UnitSystem | null;
  /** Tells the frame which units the view shows. */
  readonly onUnits: (units: UnitSystem) => void;
}
