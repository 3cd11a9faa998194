/** Where a screening begins: a table, an example, a grid; and the earlier ones. */
import type { UnitSystem } from '../../model/index.ts';
import type { Table } from './api.ts';
import { GridDoor } from './grid-door.tsx';
import { ScreeningList } from './screening-list.tsx';
import { TableDoor } from './table-door.tsx';

interface StartPanelProps {
  readonly units: UnitSystem;
  uploaded(table: Table): void;
  started(id: string): void;
}

export function StartPanel({ units, uploaded, started }: StartPanelProps) {
  return (
    <div class="area-start">
      <TableDoor uploaded={uploaded} />
      <ScreeningList />
      <GridDoor units={units} started={started} />
    </div>
  );
}
