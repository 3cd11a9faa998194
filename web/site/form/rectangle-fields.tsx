/** Bearing, length and width of a rectangular building. They are no fields of the site: they write its four corners. */
import { useRef, useState } from 'preact/hooks';
import { readNumberText, unitSymbol } from '../../../model/index.ts';
import { type Draft, valueAt, withValue } from '../draft.ts';
import { Compass } from '../instruments/compass.tsx';
import { HOW_TO_HOLD } from './bearing-fields.tsx';
import { useForm } from './form-context.ts';
import { hasFourWalls, withFourWalls } from './four-walls.ts';
import { NumberEntry } from './number-entry.tsx';
import { enteredOutline, OUTLINE, type Rectangle, rectangleCorners, rectangleOf } from './outline.ts';

const SIZES = [
  { key: 'bearingDeg', kind: 'bearing', label: 'bearing that one of its walls faces, from true north' },
  { key: 'lengthM', kind: 'length', label: 'length along that wall' },
  { key: 'widthM', kind: 'length', label: 'width, behind that wall' },
] as const;

type Size = (typeof SIZES)[number];

interface RectangleFieldsProps {
  /** Puts a rectangle in the place of any other outline. */
  again(): void;
}

export function RectangleFields({ again }: RectangleFieldsProps) {
  const { draft, units, set } = useForm();
  const [refused, setRefused] = useState<Size['key'] | null>(null);
  /** The draft before the typing: walls turn from where they stood, and not from every bearing on the way. */
  const before = useRef<Draft | null>(null);
  const outline = enteredOutline(draft);
  const rectangle = outline && rectangleOf(outline, units);
  if (rectangle === null) {
    return (
      <p class="field-wide">
        <button type="button" class="small-button" onClick={again}>
          Make the building a rectangle again
        </button>
      </p>
    );
  }

  const enter = ({ key, kind }: Size, value: number | string | undefined) => {
    const number = typeof value === 'string' ? readNumberText(value, kind) : value;
    const fits = typeof number === 'number' && (kind === 'bearing' || number > 0);
    setRefused(value === undefined || fits ? null : key);
    if (!fits) return;
    if (key === 'bearingDeg') turn(number);
    else set(OUTLINE, rectangleCorners({ ...rectangle, [key]: number } satisfies Rectangle, units));
  };
  /** The four walls turn with their building; where the walls are others, only the building turns. */
  const turn = (bearingDeg: number, done?: string) => {
    const turned = rectangleCorners({ ...rectangle, bearingDeg }, units);
    before.current ??= draft;
    if (hasFourWalls(before.current)) {
      const walls = valueAt(withFourWalls(before.current, bearingDeg, units), 'walls');
      set('', withValue(withValue(draft, OUTLINE, turned), 'walls', walls), done);
    } else set(OUTLINE, turned, done);
  };
  return (
    <fieldset class="field field-wide">
      <legend>As a rectangle</legend>
      <p class="field-hint">
        Sets the four corners and turns four walls along. Corners can then be moved, added and removed, for a house with
        wings.
      </p>
      <div class="section-fields">
        {SIZES.map((size) => (
          <NumberEntry
            key={size.key}
            id={`rectangle-${size.key}`}
            label={size.label}
            kind={size.kind}
            units={units}
            value={rectangle[size.key]}
            problems={refused === size.key ? [notRead(size, unitSymbol(size.kind, units))] : []}
            onValue={(value) => enter(size, value)}
            onLeave={() => {
              before.current = null;
              setRefused(null);
            }}
          />
        ))}
        {!hasFourWalls(draft) && (
          <p class="field-wide">
            <button
              type="button"
              onClick={() => set('', withFourWalls(draft, rectangle.bearingDeg, units), 'The walls are now its four.')}
            >
              Make its four walls
            </button>
          </p>
        )}
        <Compass
          how={HOW_TO_HOLD}
          onBearing={(bearing) => {
            turn(bearing);
            before.current = null;
          }}
        />
      </div>
    </fieldset>
  );
}

function notRead({ key, kind, label }: Size, unit: string) {
  const text =
    kind === 'bearing' ? 'no bearing: degrees or a compass point' : `no length: a number above 0, in ${unit}`;
  return { path: key, subject: label, text, allowed: '' };
}
