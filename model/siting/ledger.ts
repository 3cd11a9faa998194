/** Where the heat of the box comes from and goes to at one instant. */
import { openFaces } from '../faces.ts';
import { faceAreasM2 } from '../shading/wall-frame.ts';
import type { Box } from '../site.ts';
import { boxNodes } from '../thermal/box-network.ts';
import { covers } from '../thermal/hood.ts';
import type { Network } from '../thermal/network.ts';
import { type DayForcing, type PeriodicDay, storageW } from '../thermal/periodic-day.ts';
import { cell, readRow } from '../thermal/step-table.ts';
import { LEDGER_PATHS, type Ledger, type LedgerPath } from './results.ts';
import type { WallSun } from './wall-sun.ts';

/** Nodes that heat is given off in, not taken in from the sun. */
const INSIDE_SOURCES = new Set(['electronics', 'battery', 'lowerAir']);

/** Adds up the flows across the border of the box at a step, W, positive inward. */
export function ledgerAt(input: {
  network: Network;
  forcing: DayForcing;
  march: PeriodicDay;
  step: number;
  sun: WallSun;
  box: Box;
}): Ledger {
  const { network, forcing, march, step, sun, box } = input;
  const t = new Float64Array(network.names.length);
  readRow(march.temperaturesK, step, t);
  const ledger = Object.fromEntries(LEDGER_PATHS.map((path) => [path, 0])) as Ledger;
  const nodes = boxNodes(network);
  const inBox = new Set(nodes);

  network.links.forEach((link, k) => {
    const fromBox = inBox.has(link.from);
    if (fromBox === inBox.has(link.to)) return;
    const outward = network.linkFlowW(k, t, forcing.windMs[step] as number) * (fromBox ? 1 : -1);
    ledger[link.label as LedgerPath] -= outward;
  });
  for (const name of nodes) ledger.storage -= storageW(network, forcing, march, step, network.indexOf(name));
  const sourceW = (name: string) => cell(forcing.sourcesW, step, network.indexOf(name));
  const areas = faceAreasM2(box);
  for (const face of openFaces(box.mount)) {
    if (covers(box.hood, face)) continue;
    const absorber = box.solarAbsorptance * areas[face];
    ledger.sunBeam += absorber * (sun.faces[face].beam[step] as number);
    ledger.sunDiffuse += absorber * (sun.faces[face].diffuse[step] as number);
    ledger.sunReflected += absorber * (sun.faces[face].reflected[step] as number);
  }
  for (const name of nodes) if (INSIDE_SOURCES.has(name)) ledger.dissipation += sourceW(name);
  return ledger;
}
