import { fleetFields, fleetKinds } from '@hubwright/contracts/imports/fleet-kinds';
import { fleetTableOperations } from '@hubwright/contracts/imports/fleet-operations';
import { defineCommand } from '../../platform/command/command.ts';
import type { Tx } from '../../platform/database/client.ts';
import { stagedTable, takeOver } from '../imports/public.ts';
import { planTable } from './plan.ts';

const fleetKindOf = (kind: string) => fleetKinds.find((one) => one === kind);

export const applyFleetTable = defineCommand(fleetTableOperations.applyFleetTable, {
  async locks({ importId, mapping }, tx) {
    return ['imports', ...(await namedOnRecord(tx, importId, mapping))];
  },
  async execute(context) {
    const { tx, input, today } = context;
    const { importId } = input;
    const table = await stagedTable(tx, importId, fleetKinds);
    const { counts, subjects, facts } = await takeOver(context, {
      ...{ importId, table, fields: fleetFields[table.kind], mapping: input.mapping },
      plan: (mapping) =>
        planTable(tx, table, { ask: (text, given) => tx.$queryRawUnsafe(text, ...given), mapping, today }),
    });
    const [first, ...others] = subjects;
    const customer = table.customerId === null ? [] : [{ kind: 'customer', id: table.customerId }];
    return { reply: { id: importId, version: 1, counts }, subjects: [first, ...customer, ...others], facts };
  },
});

/** Every aircraft and unit a table may speak of, held while it is decided on: what is said of one of them meanwhile waits. */
async function namedOnRecord(tx: Tx, importId: string, mapping: Readonly<Record<string, number>>): Promise<string[]> {
  const table = await tx.stagedTable.findUnique({ where: { id: importId } });
  if (!table || !fleetKindOf(table.kind)) return [];
  const rows = table.rows as [number, ...string[]][];
  const column = (field: string) => {
    const at = mapping[field];
    return at === undefined
      ? []
      : [
          ...new Set(
            rows.map((row) =>
              String(row[at + 1] ?? '')
                .trim()
                .toUpperCase(),
            ),
          ),
        ];
  };
  const aircraft = await tx.aircraft.findMany({
    where: { registration: { in: column('registration') } },
    select: { id: true },
  });
  const items = await tx.serializedItem.findMany({
    where: { kind: 'assembly', serial: { in: column('serial') } },
    select: { id: true },
  });
  return [...aircraft.map(({ id }) => `aircraft:${id}`), ...items.map(({ id }) => `item:${id}`)];
}
