/** What the figures of a screening rest on, in sentences; what is filled in for one row stands beside that row. */
import { formatQuantity, type UnitSystem } from '../../model/index.ts';
import { columnUnits } from './columns.ts';
import { type RowSettings, USUAL_BOX, USUAL_EAVE_HEIGHT_M } from './row-site.ts';
import type { Tally } from './tally.ts';

const CLEAR_DAY =
  'A clear design day of the hottest month, or the one that a row brings; a wall without obstructions unless the table or the site file says so; earthing and cable reach are to be checked on site. Under an eave another month, when the sun stands lower, may be some kelvins worse: open an address as a site, or use rank, to see all months.';

const ASSUMED_CLIMATE =
  'No climate was given for the rows marked "assumed": theirs is blended from the invented samples by latitude and altitude. That sorts addresses roughly and decides nothing; give design temperatures, --climate or --weather.';

/** Of all rows together, by what was counted of them. */
export function screeningAssumptions(
  { climates }: Pick<Tally, 'climates'>,
  { base, columns, header }: Pick<RowSettings, 'base' | 'columns' | 'header'>,
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
  for (const { column, unit } of columnUnits(header, columns).values()) {
    lines.push(`Numbers without a unit in the column "${column}" are read in ${unit}, as its name says.`);
  }
  return lines;
}
