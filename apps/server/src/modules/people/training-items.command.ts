import { trainingOperations } from '@hubwright/contracts/people/training-operations';
import { Problem } from '@hubwright/contracts/problems';
import { defineCommand } from '../../platform/command/command.ts';
import { found, sameVersion } from '../../platform/command/version.ts';
import type { Tx } from '../../platform/database/client.ts';

const lock = 'training-items';

export const addTrainingItem = defineCommand(trainingOperations.addTrainingItem, {
  locks: () => [lock],
  async execute({ tx, input, newId }) {
    await refuseSameTitle(tx, input.title);
    const id = newId();
    await tx.trainingItem.create({ data: { id, ...input } });
    return { reply: { id, version: 1 }, subjects: [{ kind: 'training-item', id, after: 1 }] };
  },
});

/** From now on; what was logged keeps the day it was due. */
export const changeTrainingItem = defineCommand(trainingOperations.changeTrainingItem, {
  locks: () => [lock],
  async execute({ tx, input, expectedVersion }) {
    const { itemId: id, reason, ...data } = input;
    const item = found(await tx.trainingItem.findUnique({ where: { id } }), 'This training');
    sameVersion(item.version, expectedVersion);
    if (item.title !== data.title) await refuseSameTitle(tx, data.title);
    const version = item.version + 1;
    await tx.trainingItem.update({ where: { id }, data: { ...data, version } });
    const { title, everyMonths, processes, active } = item;
    return {
      reply: { id, version },
      subjects: [{ kind: 'training-item', id, before: item.version, after: version }],
      facts: { before: { title, everyMonths, processes, active } },
      reason,
    };
  },
});

async function refuseSameTitle(tx: Tx, title: string): Promise<void> {
  if (await tx.trainingItem.findUnique({ where: { title } }))
    throw new Problem('training-named', `“${title}” is on the list already`, {}, [
      { pointer: '/title', detail: 'This name is taken' },
    ]);
}
