/** What a year does on each wall, the walls beside each other. */
import type { UnitSystem } from '../../../model/index.ts';
import { unbroken } from '../words.ts';
import type { ReckonedYears } from './use-year.ts';
import { comparisonRows, comparisonWords } from './wall-comparison.ts';

export function WallsTable({ reckoned, units }: { reckoned: ReckonedYears; units: UnitSystem }) {
  const { years, result } = reckoned;
  const { site, ranking } = result;
  const barred = (name: string) => ranking.walls.some((wall) => wall.name === name && !wall.feasible);
  return (
    <>
      <h3>The year on each wall</h3>
      <p>{comparisonWords(years)}</p>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard */}
      <section class="table-scroll" tabIndex={0} aria-label="The year on each wall">
        <table class="year-walls">
          <thead>
            <tr>
              <th scope="col">
                <span class="visually-hidden">What</span>
              </th>
              {years.map(({ wall }) => (
                <th key={wall} scope="col">
                  {wall}
                  {barred(wall) && <span class="year-barred">✕ not allowed</span>}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {comparisonRows(years, site, units).map(({ name, cells }) => (
              <tr key={name}>
                <th scope="row">{unbroken(name)}</th>
                {cells.map((cell, k) => (
                  <td key={years[k]?.wall}>{cell}</td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </>
  );
}
