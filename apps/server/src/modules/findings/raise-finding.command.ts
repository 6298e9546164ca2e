import { findingOperations } from '@hubwright/contracts/findings/operations';
import { Problem } from '@hubwright/contracts/problems';
import { defineCommand } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';
import { refuseOutsideWork, writeFinding } from './write-finding.ts';

/** Whoever sees something wrong says so; an authorised inspector decides. */
export const raiseFinding = defineCommand(findingOperations.raiseFinding, {
  async locks(input, tx) {
    const traveler = await tx.traveler.findUnique({ where: { id: input.travelerId }, select: { workOrderId: true } });
    return traveler ? [`work-order:${traveler.workOrderId}`] : [];
  },
  async execute(context) {
    const { tx, input } = context;
    const traveler = found(
      await tx.traveler.findUnique({ where: { id: input.travelerId }, include: { workOrder: true } }),
      'This traveler',
    );
    refuseOutsideWork(traveler.workOrder);
    if (traveler.disposition === 'reject')
      throw new Problem('traveler-rejected', `${traveler.number}: the part was rejected`);
    const { id, number } = await writeFinding(context, traveler, { found: input });
    return {
      reply: { id, version: 1, number },
      subjects: [
        { kind: 'finding', id, after: 1 },
        { kind: 'traveler', id: traveler.id },
        { kind: 'work-order', id: traveler.workOrderId },
      ],
      facts: { number, traveler: traveler.number },
    };
  },
});
