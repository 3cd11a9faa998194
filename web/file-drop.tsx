/** The door for a file of the person's own: a place to drop it, and a button. */
import type { ComponentChildren } from 'preact';
import { useId, useState } from 'preact/hooks';

interface FileDropProps {
  /** What the button says. */
  readonly label: string;
  /** File names and types that the button's dialog offers. */
  readonly accept: string;
  readonly children: ComponentChildren;
  choose(file: File): void;
}

export function FileDrop({ label, accept, children, choose }: FileDropProps) {
  const inputId = useId();
  const [over, setOver] = useState(false);
  const drop = (event: DragEvent) => {
    event.preventDefault();
    setOver(false);
    const file = event.dataTransfer?.files[0];
    if (file) choose(file);
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: dropping is a short way to what the button does
    <div
      class={over ? 'file-drop file-drop-over' : 'file-drop'}
      onDragOver={(event) => {
        event.preventDefault();
        setOver(true);
      }}
      onDragLeave={() => setOver(false)}
      onDrop={drop}
    >
      <label class="button" for={inputId}>
        {label}
        <input
          id={inputId}
          type="file"
          accept={accept}
          onChange={({ currentTarget }) => {
            const file = currentTarget.files?.[0];
            if (file) choose(file);
            // The same file can be chosen again after it was corrected.
            currentTarget.value = '';
          }}
        />
      </label>
      <span>{children}</span>
    </div>
  );
}
