import { useEffect, useRef, useState } from 'preact/hooks';
import { compassPoint } from '../../../model/index.ts';
import { listAt, textAt, valueAt } from '../draft.ts';
import { fieldId, goToField, useForm } from './form-context.ts';
import { Section } from './section.tsx';
import { WallEditor } from './wall-editor.tsx';

export interface WallActions {
  rename(index: number, name: string): void;
  remove(index: number): void;
}

export function WallsSection({ rename, remove }: WallActions) {
  const { draft, set } = useForm();
  const walls = listAt(draft, 'walls');
  // The wall after a removed one takes its place, and must not stand open there with its own button to remove it.
  const [removals, setRemovals] = useState(0);
  const addButton = useRef<HTMLButtonElement>(null);
  // A wall that was just added is opened at its first empty field, which exists only after the next drawing.
  const added = useRef<number | null>(null);
  useEffect(() => {
    if (added.current !== null) goToField(`walls.${added.current}.azimuthDeg`);
    added.current = null;
  });

  const add = () => {
    added.current = walls.length;
    set(`walls.${walls.length}`, { name: freeName(walls) });
  };
  const gist = walls
    .map((_, index) => {
      const azimuth = valueAt(draft, `walls.${index}.azimuthDeg`);
      return typeof azimuth === 'number' ? compassPoint(azimuth) : textAt(draft, `walls.${index}.name`);
    })
    .join(', ');

  return (
    <Section title={`Walls and what shades them (${walls.length})`} gist={gist} path="walls">
      <ul class="wall-editors field-wide">
        {walls.map((_, index) => (
          <li key={`${removals} ${index}`} id={`${fieldId(`walls.${index}`)}-item`}>
            <WallEditor
              index={index}
              rename={(name) => rename(index, name)}
              remove={
                walls.length > 1
                  ? () => {
                      remove(index);
                      setRemovals(removals + 1);
                      addButton.current?.focus();
                    }
                  : null
              }
            />
          </li>
        ))}
      </ul>
      <p class="field-wide">
        <button type="button" ref={addButton} onClick={add}>
          Add a wall
        </button>
      </p>
    </Section>
  );
}

function freeName(walls: readonly unknown[]): string {
  const taken = new Set(walls.map((wall) => textAt(wall, 'name').trim()));
  let number = walls.length + 1;
  while (taken.has(`wall ${number}`)) number += 1;
  return `wall ${number}`;
}
