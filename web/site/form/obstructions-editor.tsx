/** What shades a wall: an eave above it, and what stands before it: side walls, fences, other houses, trees. */
import { useEffect, useRef } from 'preact/hooks';
import { fromDisplay, toDisplay, type UnitSystem, USUAL_LEAF_MONTHS } from '../../../model/index.ts';
import { type Draft, listAt, textAt, valueAt } from '../draft.ts';
import { FieldMessages } from './field-messages.tsx';
import { fieldId, goToField, useForm } from './form-context.ts';
import { MONTHS } from './months.ts';
import { enteredMount } from './mount-fields.tsx';
import { NumberField } from './number-field.tsx';
import { ShadeIcon, type ShadeKind } from './shade-icons.tsx';
import { ChoiceField } from './text-field.tsx';

const KINDS = ['sideWall', 'front', 'block', 'tree'] as const;

type Kind = (typeof KINDS)[number];

interface KindWords {
  readonly title: string;
  /** For buttons. */
  readonly noun: string;
  /** In other words, below the picture on the button. */
  readonly aka: string;
  readonly hint: string;
  /** The number fields; those that the model fills in where they are left empty stand after the needed ones. */
  readonly fields: readonly { readonly key: string; readonly label?: string; readonly optional?: true }[];
}

const RIGHT = 'middle to the right of the box, seen from outside; to the left: negative';

const WORDS: Record<Kind, KindWords> = {
  sideWall: {
    title: 'Side wall or inside corner',
    noun: 'side wall',
    aka: 'inside corner',
    hint: 'Stands at a right angle to this wall and touches it.',
    fields: [
      { key: 'distanceM', label: 'distance from the middle of the box, along the wall' },
      { key: 'depthM', label: 'how far it stands out from the wall' },
      { key: 'heightM' },
    ],
  },
  front: {
    title: 'Fence, facade or screen across',
    noun: 'fence',
    aka: 'facade, screen',
    hint: 'An upright surface that faces this wall.',
    fields: [
      { key: 'distanceM', label: 'distance out from the wall' },
      { key: 'heightM' },
      { key: 'widthM', optional: true },
      { key: 'offsetM', label: RIGHT, optional: true },
      { key: 'transmittance', optional: true },
    ],
  },
  block: {
    title: 'House, shed or other block',
    noun: 'block',
    aka: 'house, shed',
    hint: 'Its sides run along this wall and straight out from it.',
    fields: [
      { key: 'rightM', label: RIGHT },
      { key: 'outM', label: 'distance from the wall to its near side' },
      { key: 'widthM', label: 'width, along the wall' },
      { key: 'depthM' },
      { key: 'heightM' },
    ],
  },
  tree: {
    title: 'Tree',
    noun: 'tree',
    aka: 'with its leaves',
    hint: 'A single crown on a trunk.',
    fields: [
      { key: 'rightM', label: 'trunk to the right of the box, seen from outside; to the left: negative' },
      { key: 'outM', label: 'distance from the wall to the middle of the trunk' },
      { key: 'heightM' },
      { key: 'crownDiameterM' },
      { key: 'crownBaseM', optional: true },
      { key: 'trunkDiameterM', optional: true },
      { key: 'leafOnTransmittance', optional: true },
      { key: 'leafOffTransmittance', optional: true },
    ],
  },
};

interface ObstructionsEditorProps {
  readonly path: string;
  /** Where the eave of the wall stands in the site. */
  readonly eavePath: string;
}

export function ObstructionsEditor({ path, eavePath }: ObstructionsEditorProps) {
  const { draft, units, problems, filled, set } = useForm();
  const list = listAt(draft, path);
  const frame = useRef<HTMLFieldSetElement>(null);
  // What was just added is entered at its first field, which exists only after the next drawing.
  const added = useRef<string | null>(null);
  useEffect(() => {
    if (added.current !== null) goToField(added.current);
    added.current = null;
  });

  /** A size of the box; as last computed where the form holds text or nothing. */
  const sizeM = (key: 'widthM' | 'depthM' | 'standOffM' | 'postDistanceM'): number => {
    const entered = valueAt(draft, `box.${key}`);
    return typeof entered === 'number' ? entered : (filled?.box[key] ?? 0);
  };
  const add = (kind: Kind) => {
    const entry = `${path}.${list.length}`;
    added.current = `${entry}.${kind === 'sideWall' ? 'side' : WORDS[kind].fields[0]?.key}`;
    const behindM = sizeM(enteredMount(draft) === 'post' ? 'postDistanceM' : 'standOffM');
    set(entry, fresh(kind, units, { halfWidthM: sizeM('widthM') / 2, frontM: sizeM('depthM') + behindM }));
  };
  const addEave = () => {
    added.current = `${eavePath}.depthM`;
    set(eavePath, usualEave(units));
  };
  const remove = (index: number) => {
    const rest = list.toSpliced(index, 1);
    set(path, rest.length > 0 ? rest : undefined);
    frame.current?.focus();
  };

  return (
    <fieldset class="field field-wide" id={fieldId(path)} tabIndex={-1} ref={frame}>
      <legend>What shades this wall</legend>
      <p class="field-hint">Add what there is, then correct its figures. Heights are above the ground.</p>
      <FieldMessages id={fieldId(path)} problems={problems.get(path) ?? []} />
      {list.map((entry, index) => (
        <ObstructionEditor
          key={index}
          path={`${path}.${index}`}
          number={numberAmongItsKind(list, entry, index)}
          remove={() => remove(index)}
        />
      ))}
      <div class="shade-choices">
        {(valueAt(draft, eavePath) ?? null) === null && (
          <ShadeButton kind="eave" words="Add an eave" aka="porch roof" add={addEave} />
        )}
        {KINDS.map((kind) => (
          <ShadeButton
            key={kind}
            kind={kind}
            words={`Add a ${WORDS[kind].noun}`}
            aka={WORDS[kind].aka}
            add={() => add(kind)}
          />
        ))}
      </div>
    </fieldset>
  );
}

interface ShadeButtonProps {
  readonly kind: ShadeKind;
  readonly words: string;
  readonly aka: string;
  add(): void;
}

function ShadeButton({ kind, words, aka, add }: ShadeButtonProps) {
  return (
    <button type="button" class="shade-choice" onClick={add}>
      <ShadeIcon kind={kind} />
      <span>{words}</span>
      <span class="shade-aka">{aka}</span>
    </button>
  );
}

interface ObstructionEditorProps {
  readonly path: string;
  /** Tells it from others of its kind; empty where there is no other. */
  readonly number: string;
  remove(): void;
}

function ObstructionEditor({ path, number, remove }: ObstructionEditorProps) {
  const { draft, problems } = useForm();
  const kind = knownKind(valueAt(draft, path));
  const words = kind === null ? null : WORDS[kind];
  const id = fieldId(path);
  return (
    <fieldset class="list-entry" id={id} tabIndex={-1}>
      <legend>{`${words?.title ?? 'Something of an unknown kind'}${number}`}</legend>
      <FieldMessages id={id} problems={problems.get(path) ?? []}>
        {words?.hint}
      </FieldMessages>
      <div class="section-fields">
        {kind === null && (
          <ChoiceField
            path={`${path}.kind`}
            label="What it is"
            options={KINDS.map((known) => ({ value: known, label: WORDS[known].title }))}
          />
        )}
        {kind === 'sideWall' && (
          <ChoiceField
            path={`${path}.side`}
            label="On which side of the box, seen from outside"
            options={[
              { value: 'left', label: 'left' },
              { value: 'right', label: 'right' },
            ]}
          />
        )}
        {words?.fields.map(({ key, label, optional = false }) => (
          <NumberField
            key={key}
            path={`${path}.${key}`}
            needed={!optional}
            {...(label === undefined ? {} : { label })}
          />
        ))}
        {kind === 'tree' && <LeafMonths path={`${path}.leafOnMonths`} />}
      </div>
      <button type="button" class="small-button" onClick={remove}>
        {`Remove the ${words?.noun ?? 'unknown thing'}${number}`}
      </button>
    </fieldset>
  );
}

/** First and last month in leaf. */
function LeafMonths({ path }: { path: string }) {
  const { draft, problems, set } = useForm();
  const months = USUAL_LEAF_MONTHS.map((usual, index) => valueAt(draft, `${path}.${index}`) ?? usual);
  const choose = (index: number, month: string) => set(path, months.with(index, Number(month)));
  return (
    <fieldset class="field field-wide" id={fieldId(path)} tabIndex={-1}>
      <legend>In leaf</legend>
      <FieldMessages id={fieldId(path)} problems={problems.get(path) ?? []}>
        In the months of the north. South of the equator the year is shifted by half.
      </FieldMessages>
      <div class="field-pair">
        {['From', 'to the end of'].map((label, index) => (
          <ChoiceField
            key={label}
            path={`${path}.${index}`}
            label={label}
            options={MONTHS}
            standIn={String(USUAL_LEAF_MONTHS[index])}
            onChoose={(month) => choose(index, month)}
          />
        ))}
      </div>
    </fieldset>
  );
}

function knownKind(entry: unknown): Kind | null {
  return KINDS.find((kind) => kind === textAt(entry, 'kind')) ?? null;
}

function numberAmongItsKind(list: readonly unknown[], entry: unknown, index: number): string {
  const same = (other: unknown) => knownKind(other) === knownKind(entry);
  if (list.filter(same).length < 2) return '';
  return ` ${list.slice(0, index + 1).filter(same).length}`;
}

/** An eave of a usual house, round in the unit on show. */
function usualEave(units: UnitSystem): Draft {
  const [depth, above] = units === 'metric' ? [0.6, 0.8] : [2, 2.5];
  const metres = (shown: number) => Number(fromDisplay('length', shown, units).toPrecision(12));
  return { depthM: metres(depth), heightAboveBoxM: metres(above) };
}

/** A complete obstruction to start from, clear of the box. */
function fresh(kind: Kind, units: UnitSystem, box: { halfWidthM: number; frontM: number }): Draft {
  // Round in the unit on show.
  const round = (metres: number) => {
    const step = units === 'metric' ? 0.5 : 1;
    return fromDisplay('length', Math.ceil(toDisplay('length', metres, units) / step) * step, units);
  };
  switch (kind) {
    case 'sideWall':
      return { kind, side: 'left', distanceM: round(0.5 + box.halfWidthM), depthM: round(2), heightM: round(2.5) };
    case 'front':
      return { kind, distanceM: round(1 + box.frontM), heightM: round(2) };
    case 'block':
      return { kind, rightM: 0, outM: round(3 + box.frontM), widthM: round(4), depthM: round(3), heightM: round(3) };
    case 'tree':
      return { kind, rightM: 0, outM: round(4 + box.frontM), heightM: round(5), crownDiameterM: round(4) };
  }
}
