import { guessMapping } from '@hubwright/contracts/imports/kinds';
import { importOperations } from '@hubwright/contracts/imports/operations';
import { z } from 'zod';
import { defineCommand } from '../../platform/command/command.ts';

const hour = 60 * 60 * 1000;
/** How long a table waits to be applied. */
export const tableWaits = 24 * hour;

/** What was sent takes the place of input that a person writes: the same key with other bytes is another request. */
const stagedInput = importOperations.uploadTable.input.extend({ sha256: z.string() });

export const stageTable = (table: { header: string[]; rows: [number, ...string[]][] }) =>
  defineCommand(
    { ...importOperations.uploadTable, input: stagedInput },
    {
      locks: () => [],
      async execute({ tx, input, actor, now, newId }) {
        const id = newId();
        const { kind, sha256 } = input;
        const { header, rows } = table;
        await tx.stagedTable.create({
          data: { id, kind, sha256, header, rows, rowCount: rows.length, uploadedBy: actor.personId, uploadedAt: now },
        });
        const keptUntil = new Date(now.getTime() + tableWaits).toISOString();
        return {
          reply: { id, kind, header, rows: rows.length, mapping: guessMapping(kind, header), keptUntil },
          subjects: [{ kind: 'import', id }],
          facts: { kind, sha256, rows: rows.length },
        };
      },
    },
  );
