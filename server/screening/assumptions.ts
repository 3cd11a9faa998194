/** What the figures of a screening rest on, in sentences; what is filled in for one row stands beside that row. */
import { formatQuantity, type UnitSystem } from '../../model/index.ts';
import { type RowSettings, USUAL_BOX, USUAL_EAVE_HEIGHT_M } from './row-site.ts';
import type { Tally } from './tally.ts';

const CLEAR_DAY =
  'A clear design day, a wall without obstructions unless the table or the site file says so; earthing and cable reach are to be checked on site.';

const ASSUMED_CLIMATE =
  'No climate was given for the rows marked "assumed": theirs is blended from the invented samples by latitude and altitude. That sorts addresses roughly and decides nothing; give design temperatures, --climate or --weather.';

/** Of all rows together, by what was counted of them. */
export function screeningAssumptions(
  { climates }: Pick<Tally, 'climates'>,
  { base, columns }: Pick<RowSettings, 'base' | 'columns'>,
  units: UnitSystem,
): string[] {
  const { widthM, heightM, depthM, powerW } = USUAL_BOX;
  const size = (m: number) => formatQuantity('smallLength', m, units);
  const lines = [CLEAR_DAY];
  if ((climates['assumed'] ?? 0) > 0) lines.push(ASSUMED_CLIMATE);
  if (base.box === undefined) {
    lines.push(
      `Where the table says nothing else, a box of ${size(widthM)} by ${size(heightM)} by ${size(depthM)} that gives off ${powerW} W, a small terminal invented for this program.`,
    );
  }
  if (columns.eaveDepth !== undefined) {
    lines.push(
      `Eaves stand ${formatQuantity('length', USUAL_EAVE_HEIGHT_M, units)} above the box where the table gives their depth only (assumed).`,
    );
  }
  return lines;
}
