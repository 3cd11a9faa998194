/** The hard constraints of the trade: a wall that fails one is no answer, however cool. */
import type { Site, Wall } from '../site.ts';
import { formatQuantity, type UnitSystem } from '../units.ts';
import type { Finding } from './results.ts';

/** Checks a wall against the site's constraints. A distance that nobody entered is a thing to look at, not a failure. */
export function constraintFindings(site: Site, wall: Wall, units: UnitSystem): Finding[] {
  const { constraints, box } = site;
  const findings: Finding[] = [];
  const length = (metres: number) => formatQuantity('length', metres, units);
  const run = (check: 'electrode' | 'cable', what: string, runM: number | null, maxM: number | null) => {
    if (maxM === null) return;
    if (runM === null) {
      findings.push({ check, status: 'look', text: `${what}: not entered; up to ${length(maxM)} is permitted` });
      return;
    }
    const within = runM <= maxM;
    const text = `${what}: ${length(runM)} ${within ? 'is within' : 'exceeds'} ${length(maxM)}`;
    findings.push({ check, status: within ? 'pass' : 'fail', text });
  };
  run('electrode', 'run to the earth electrode', wall.electrodeDistanceM, constraints.maxElectrodeDistanceM);
  run('cable', 'run to the incoming cable', wall.cableDistanceM, constraints.maxCableDistanceM);
  if (constraints.mountHeightM !== null) {
    const [low, high] = constraints.mountHeightM;
    const within = box.mountHeightM >= low && box.mountHeightM <= high;
    findings.push({
      check: 'mountHeight',
      status: within ? 'pass' : 'fail',
      text: `mounting height ${length(box.mountHeightM)} is ${within ? 'within' : 'outside'} ${length(low)} to ${length(high)}`,
    });
  }
  return findings;
}
