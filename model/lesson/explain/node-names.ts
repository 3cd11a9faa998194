/** What the nodes of the heat balance are called, and what stands below a symbol for them. */
const NAMES: Readonly<Record<string, string>> = {
  front: 'the front',
  left: 'the left side',
  right: 'the right side',
  top: 'the lid',
  bottom: 'the underside',
  back: 'the back',
  insideAir: 'the air inside',
  electronics: 'the electronics',
  battery: 'the battery',
  partition: 'the sheet between the rooms',
  lowerAir: 'the air in the lower room',
  outsideAir: 'the outside air',
  sky: 'the sky, as warm as a black body that radiates like it',
  ground: 'the ground before the wall',
  wallBeside: 'the wall beside the box',
  wallBehind: 'the wall behind the box',
};

const SHORT: Readonly<Record<string, string>> = {
  insideAir: 'in',
  outsideAir: 'out',
  lowerAir: 'low',
  wallBeside: 'wall',
  wallBehind: 'behind',
  electronics: 'el',
  battery: 'bat',
  partition: 'sheet',
};

/** A node as a person reads it. */
export function nodeName(node: string): string {
  const hood = /^hood-(.*)$/.exec(node)?.[1];
  return hood === undefined ? (NAMES[node] ?? node) : `the hood before ${NAMES[hood] ?? hood}`;
}

/** What stands below a symbol of the node. */
export function nodeSymbol(node: string): string {
  const hood = /^hood-(.*)$/.exec(node)?.[1];
  return hood === undefined ? (SHORT[node] ?? node) : `hood,${hood}`;
}
