/** The outline of the building that the walls belong to, so that its wings and corners shade them. */
import { FIELDS, fromDisplay, readNumberText, type UnitSystem } from '../../../model/index.ts';
import { type Draft, listAt, valueAt } from '../draft.ts';
import { shortQuantity } from '../quantity-text.ts';
import { BearingFields } from './bearing-fields.tsx';
import { CheckField } from './check-field.tsx';
import { CornersEditor } from './corners-editor.tsx';
import { fieldId, useForm } from './form-context.ts';
import { NumberField } from './number-field.tsx';
import { enteredOutline, OUTLINE, rectangleCorners, rectangleOf, withoutBuilding } from './outline.ts';
import { RectangleFields } from './rectangle-fields.tsx';
import { Section } from './section.tsx';

const BUILDING = 'building';

export function BuildingSection() {
  const { draft, units, set } = useForm();
  const known = (valueAt(draft, BUILDING) ?? null) !== null;
  const begin = () => set(BUILDING, { outlineM: usualRectangle(draft, units) });
  return (
    <Section title="Building" gist={known ? gistOf(draft, units) : 'outline not entered'} path={BUILDING}>
      {!known && <BearingFields />}
      <div class="field-wide">
        <CheckField
          path={BUILDING}
          id={`${fieldId(BUILDING)}-known`}
          label="I know the building's outline"
          checked={known}
          onCheck={(on) => (on ? begin() : set('', withoutBuilding(draft), 'The building was taken out.'))}
        >
          Then its wings and corners shade the walls. Otherwise each wall is taken as long and straight.
        </CheckField>
      </div>
      {known && (
        <>
          <RectangleFields
            again={() => set(OUTLINE, usualRectangle(draft, units), 'The building is a rectangle again.')}
          />
          <NumberField path={`${BUILDING}.heightM`} />
          <CornersEditor />
        </>
      )}
    </Section>
  );
}

/** A house of a usual size, round in the displayed unit, that the first wall is a wall of. */
function usualRectangle(draft: Draft, units: UnitSystem) {
  const entered = valueAt(draft, 'walls.0.azimuthDeg');
  const read = typeof entered === 'string' ? readNumberText(entered, 'bearing') : entered;
  const [length, width] = units === 'metric' ? [12, 8] : [40, 26];
  return rectangleCorners(
    {
      bearingDeg: typeof read === 'number' && Number.isFinite(read) ? read : 180,
      lengthM: fromDisplay('length', length, units),
      widthM: fromDisplay('length', width, units),
      firstCorner: [0, 0],
      anticlockwise: false,
    },
    units,
  );
}

function gistOf(draft: Draft, units: UnitSystem): string {
  const outline = enteredOutline(draft);
  const rectangle = outline && rectangleOf(outline, units);
  const size = (metres: number) => shortQuantity(metres, 'length', units);
  const shape = rectangle
    ? `${size(rectangle.lengthM)} × ${size(rectangle.widthM)}`
    : `${listAt(draft, OUTLINE).length} corners`;
  const heightM = valueAt(draft, `${BUILDING}.heightM`) ?? FIELDS['building.heightM'].default.value;
  return typeof heightM === 'number' ? `${shape}, ${size(heightM)} high` : shape;
}
