import type { ImportField } from '@hubwright/contracts/imports/fields';
import { importFields } from '@hubwright/contracts/imports/kinds';
import { importOperations } from '@hubwright/contracts/imports/operations';
import type { Operation } from '@hubwright/contracts/operation';
import { z } from 'zod';
import { type Context, defineCommand } from '../../platform/command/command.ts';
import { type MappingOwner, mappedColumns } from './mapping.ts';

const hour = 60 * 60 * 1000;
/** How long a table waits to be applied. */
export const tableWaits = 24 * hour;

/** A table as it was read. */
export interface ReadTable {
  readonly header: string[];
  readonly rows: [number, ...string[]][];
}

interface ToStage extends MappingOwner, ReadTable {
  readonly sha256: string;
  readonly fields: readonly ImportField[];
}

/** Keeps the rows until they are applied or a day is over. */
export async function keepStaged({ tx, actor, now, newId }: Context<Operation>, staged: ToStage) {
  const id = newId();
  const { kind, customerId, sha256, header, rows } = staged;
  await tx.stagedTable.create({
    data: {
      ...{ id, kind, customerId, sha256, header, rows, rowCount: rows.length },
      uploadedBy: actor.personId,
      uploadedAt: now,
    },
  });
  const { mapping } = await mappedColumns(tx, staged);
  const keptUntil = new Date(now.getTime() + tableWaits).toISOString();
  return { id, header, rows: rows.length, mapping: { ...mapping }, keptUntil };
}

/** What was sent takes the place of input that a person writes: the same key with other bytes is another request. */
const stagedInput = importOperations.uploadTable.input.extend({ sha256: z.string() });

export const stageTable = (table: ReadTable) =>
  defineCommand(
    { ...importOperations.uploadTable, input: stagedInput },
    {
      locks: () => [],
      async execute(context) {
        const { kind, sha256 } = context.input;
        const fields = importFields[kind];
        const kept = await keepStaged(context as never, { ...table, kind, sha256, fields, customerId: null });
        return {
          reply: { ...kept, kind },
          subjects: [{ kind: 'import', id: kept.id }],
          facts: { kind, sha256, rows: kept.rows },
        };
      },
    },
  );
