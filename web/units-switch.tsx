import type { UnitSystem } from '../model/index.ts';

const CHOICES: readonly { units: UnitSystem; label: string }[] = [
  { units: 'metric', label: 'Metric' },
  { units: 'us', label: 'US' },
];

export function UnitsSwitch({ units, onChoose }: { units: UnitSystem; onChoose: (units: UnitSystem) => void }) {
  return (
    <fieldset class="units-switch">
      <legend>Units</legend>
      {CHOICES.map((choice) => (
        <label key={choice.units}>
          <input
            type="radio"
            name="units"
            value={choice.units}
            checked={units === choice.units}
            // A click on the one that is marked is a choice, too: it holds for what is opened next. Arrow keys click as well.
            onClick={() => onChoose(choice.units)}
          />
          <span>{choice.label}</span>
        </label>
      ))}
    </fieldset>
  );
}
