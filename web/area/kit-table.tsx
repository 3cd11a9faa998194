/** How many of each kit class go on the truck. */
import type { Summary } from './api.ts';
import { countText } from './run-words.ts';

export function KitTable({ summary }: { summary: Summary }) {
  const all = Math.max(1, summary.counts.addresses);
  return (
    <table class="kit-table">
      <caption class="visually-hidden">Addresses by what they need</caption>
      <thead>
        <tr>
          <th scope="col">Kit</th>
          <th scope="col">Addresses</th>
          <th scope="col">Share</th>
        </tr>
      </thead>
      <tbody>
        {summary.kitClasses.map(({ kit, label, count }) => (
          <tr key={kit}>
            <th scope="row">
              <b>{kit}</b>
              <span class="kit-meaning">{label}</span>
            </th>
            <td>{countText(count)}</td>
            <td>{shareText(count / all)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** A few are not none. */
function shareText(share: number): string {
  return share > 0 && share < 0.01 ? '< 1\u00a0%' : `${Math.round(share * 100)}\u00a0%`;
}
