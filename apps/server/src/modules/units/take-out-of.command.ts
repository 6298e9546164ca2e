import { Problem } from '@hubwright/contracts/problems';
import { assemblyOperations } from '@hubwright/contracts/units/assembly-operations';
import { defineCommand } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';
import { fromDbDate } from '../../platform/database/dates.ts';
import { refuseFuture } from '../customers/public.ts';
import { refuseNonsense } from './intervals.ts';
import { uninstall } from './public.ts';

/** Out of a part of a unit; what leaves a unit itself leaves by its work order. */
export const takeOutOf = defineCommand(assemblyOperations.takeOutOf, {
  locks: (input) => [`item:${input.itemId}`],
  async execute(context) {
    const { tx, input, today } = context;
    const item = found(await tx.serializedItem.findUnique({ where: { id: input.itemId } }), 'This part');
    const sits = found(
      await tx.installation.findFirst({ where: { itemId: item.id, toDate: null }, include: { parent: true } }),
      'What it sits in',
    );
    refuseFuture(input.on, today, '/on');
    const wrong = (pointer: string, detail: string) => new Problem('invalid-input', detail, {}, [{ pointer, detail }]);
    if (sits.parent.kind === 'assembly')
      throw wrong('/itemId', 'It sits in the unit itself, which it leaves by a finding on its work order');
    if (input.on < fromDbDate(sits.fromDate)) throw wrong('/on', `It was fitted on ${fromDbDate(sits.fromDate)}`);
    await uninstall(context, { itemId: item.id, on: input.on });
    await refuseNonsense(context, item.id);
    return {
      reply: { id: item.id, version: item.version },
      subjects: [
        { kind: 'unit', id: item.id },
        { kind: 'unit', id: sits.parentId },
      ],
      facts: { position: sits.position, on: input.on, outOf: sits.parent.serial ?? sits.parent.provisionalName },
      reason: input.basis,
    };
  },
});
