import { grouped } from '../../platform/database/grouped.ts';
import { type Plan, planned } from '../imports/public.ts';
import { fleetCells } from './fleet-cells.ts';
import { fleetFacts } from './fleet-facts.ts';
import { figuresOf } from './judge-installation.ts';
import { EarlierRows } from './judge-named.ts';
import { judgeRecord } from './judge-record.ts';
import { judgeRow } from './judge-row.ts';
import type { CustomersTable, FleetModels } from './shapes.ts';
import { writeFleet } from './write-fleet.ts';

/** A customer's aircraft and the units on them: what of it is new, what differs from the record, and what is wrong. */
export async function planFleet(models: FleetModels, table: CustomersTable): Promise<Plan> {
  const read = table.rows.map((row) => ({ row, cells: fleetCells(table.mapping, row.cells, table.today) }));
  const facts = await fleetFacts(
    models,
    table,
    read.map(({ cells }) => cells),
  );
  const ofMeter = grouped(read, ({ cells }) => `${cells.registration} ${cells.meter ?? ''}`);
  const earlier = new EarlierRows();
  const judged = read.map(({ row, cells }) => {
    const beside = (ofMeter.get(`${cells.registration} ${cells.meter ?? ''}`) ?? []).filter((one) => one.row !== row);
    const others = beside.flatMap((one) => figuresOf(one.cells));
    return judgeRow(row, cells, { facts, earlier, others });
  });
  await judgeRecord(models, table, judged);
  return {
    rows: judged.map(({ row, read: { cells }, step, changes }) =>
      planned(row, {
        errors: cells.errors,
        isNew: step?.installation === 'new',
        changes:
          step?.installation === 'new' ? changes.filter(({ from }) => from !== 'unknown' && from !== '') : changes,
      }),
    ),
    write: (context) =>
      writeFleet(
        context,
        table.customerId,
        judged.flatMap(({ step }) => step ?? []),
      ),
  };
}
