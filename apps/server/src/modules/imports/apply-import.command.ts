import { importFields, importKinds } from '@hubwright/contracts/imports/kinds';
import { importOperations } from '@hubwright/contracts/imports/operations';
import { defineCommand } from '../../platform/command/command.ts';
import { planImport } from './plan.ts';
import { stagedTable } from './table.ts';
import { takeOver } from './take-over.ts';

export const applyImport = defineCommand(importOperations.applyImport, {
  locks: () => ['imports'],
  async execute(context) {
    const { tx, input, today } = context;
    const { importId } = input;
    const table = await stagedTable(tx, importId, importKinds);
    const { kind, rows } = table;
    const { counts, subjects, facts } = await takeOver(context, {
      ...{ importId, table, fields: importFields[kind], mapping: input.mapping },
      plan: (mapping) =>
        planImport(kind, tx, { ask: (text, given) => tx.$queryRawUnsafe(text, ...given), rows, mapping, today }),
    });
    return { reply: { id: importId, version: 1, counts }, subjects, facts };
  },
});
