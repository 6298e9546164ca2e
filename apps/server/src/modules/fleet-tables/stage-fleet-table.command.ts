import { fleetFields, fleetRows } from '@hubwright/contracts/imports/fleet-kinds';
import { fleetTableOperations } from '@hubwright/contracts/imports/fleet-operations';
import { Problem } from '@hubwright/contracts/problems';
import { z } from 'zod';
import { defineCommand } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';
import { keepStaged, type ReadTable } from '../imports/public.ts';

/** What was sent takes the place of input that a person writes: the same key with other bytes is another request. */
const stagedInput = fleetTableOperations.uploadFleetTable.input.extend({ sha256: z.string() });

export const stageFleetTable = (table: ReadTable) =>
  defineCommand(
    { ...fleetTableOperations.uploadFleetTable, input: stagedInput },
    {
      locks: () => [],
      async execute(context) {
        const { customerId, kind, sha256 } = context.input;
        const { tx } = context;
        found(await tx.customer.findUnique({ where: { id: customerId }, select: { id: true } }), 'This customer');
        if (table.rows.length > fleetRows)
          throw new Problem('table-too-large', `It has ${table.rows.length} rows; ${fleetRows} are the most at once`);
        const fields = fleetFields[kind];
        const kept = await keepStaged(context as never, { ...table, kind, sha256, fields, customerId });
        return {
          reply: { ...kept, kind },
          subjects: [
            { kind: 'import', id: kept.id },
            { kind: 'customer', id: customerId },
          ],
          facts: { kind, sha256, rows: kept.rows },
        };
      },
    },
  );
