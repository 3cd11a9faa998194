/** The corners of the building's outline, in order round it, and the edges between them. */
import { useEffect, useRef } from 'preact/hooks';
import { fieldAt, outlineEdges } from '../../../model/index.ts';
import { listAt } from '../draft.ts';
import { rangeText } from '../quantity-text.ts';
import { edgeText } from './edge-text.ts';
import { FieldMessages, messageIds } from './field-messages.tsx';
import { fieldId, goToField, useForm } from './form-context.ts';
import { NumberField } from './number-field.tsx';
import { enteredOutline, FEWEST_CORNERS, OUTLINE, withCornerAfter, withoutCorner } from './outline.ts';

const UNIT_NOUN = { metric: 'Metres', us: 'Feet' };

export function CornersEditor() {
  const { draft, units, problems, set } = useForm();
  const corners = listAt(draft, OUTLINE);
  const outline = enteredOutline(draft);
  const edges = outline ? outlineEdges(outline) : [];
  const frame = useRef<HTMLFieldSetElement>(null);
  // A corner that was just added is entered at its first field, which exists only after the next drawing.
  const added = useRef<string | null>(null);
  useEffect(() => {
    if (added.current !== null) goToField(added.current);
    added.current = null;
  });

  const addAfter = (k: number) => {
    added.current = `${OUTLINE}.${k + 1}.0`;
    set('', withCornerAfter(draft, k, units));
  };
  const remove = (k: number) => {
    set('', withoutCorner(draft, k), `Corner ${k} was removed.`);
    frame.current?.focus();
  };

  const id = fieldId(OUTLINE);
  const wrong = problems.get(OUTLINE) ?? [];
  const field = fieldAt(`${OUTLINE}.0.0`);
  return (
    <fieldset
      class="field field-wide"
      id={id}
      tabIndex={-1}
      ref={frame}
      aria-describedby={messageIds(id, wrong.length > 0, false)}
    >
      <legend>Corners</legend>
      <FieldMessages id={id} problems={wrong}>
        {UNIT_NOUN[units]} east and north of any fixed place, in order round the building; to the west and to the south:
        negative. {field && rangeText(field, units)}.
      </FieldMessages>
      {corners.map((_, k) => (
        <Corner
          key={k}
          number={k}
          edge={edges[k] && `Edge ${k}, from here to corner ${(k + 1) % corners.length}, ${edgeText(edges[k], units)}.`}
          addAfter={() => addAfter(k)}
          remove={corners.length > FEWEST_CORNERS ? () => remove(k) : null}
        />
      ))}
    </fieldset>
  );
}

interface CornerProps {
  readonly number: number;
  /** The edge that begins here, in words. */
  readonly edge: string | undefined;
  addAfter(): void;
  /** Null where no corner can be spared. */
  readonly remove: (() => void) | null;
}

function Corner({ number, edge, addAfter, remove }: CornerProps) {
  const { problems } = useForm();
  const path = `${OUTLINE}.${number}`;
  const id = fieldId(path);
  return (
    <fieldset class="list-entry" id={id} tabIndex={-1}>
      <legend>Corner {number}</legend>
      <div class="field-pair">
        <NumberField path={`${path}.0`} label="east" quiet />
        <NumberField path={`${path}.1`} label="north" quiet />
      </div>
      <FieldMessages id={id} problems={problems.get(path) ?? []}>
        {edge}
      </FieldMessages>
      <div class="buttons">
        <button type="button" class="small-button" onClick={addAfter}>
          Add a corner after {number}
        </button>
        {remove && (
          <button type="button" class="small-button" onClick={remove}>
            Remove corner {number}
          </button>
        )}
      </div>
    </fieldset>
  );
}
