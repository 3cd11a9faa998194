/** What the quotes of one line of a table do, whether the line begins a record or goes on with a quoted cell. */

/** A line as it is met outside or inside a quoted cell. */
export interface LineQuotes {
  /** Whether it ends inside a quoted cell. */
  readonly open: boolean;
  /** Delimiters in it that part cells. */
  readonly delimiters: number;
  /** Whether its quotes are as the format has them: round whole cells, those inside written twice. */
  readonly sound: boolean;
}

const QUOTE = 0x22;

/** Looks at each character once. A quote opens a cell at its beginning only, and stands for itself elsewhere. */
export function lineQuotes(text: string, delimiter: string, inside: boolean): LineQuotes {
  const parting = delimiter.charCodeAt(0);
  let state: 'start' | 'plain' | 'quoted' | 'closed' = inside ? 'quoted' : 'start';
  let delimiters = 0;
  let sound = true;
  for (let at = 0; at < text.length; at++) {
    const character = text.charCodeAt(at);
    if (state === 'quoted') {
      if (character !== QUOTE) continue;
      if (text.charCodeAt(at + 1) === QUOTE) at += 1;
      else state = 'closed';
    } else if (character === parting) {
      state = 'start';
      delimiters += 1;
    } else if (state === 'start' && character === QUOTE) state = 'quoted';
    else {
      if (state === 'closed' || character === QUOTE) sound = false;
      state = 'plain';
    }
  }
  return { open: state === 'quoted', delimiters, sound };
}
