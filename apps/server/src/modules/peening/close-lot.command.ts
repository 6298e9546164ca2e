import { peeningOperations } from '@hubwright/contracts/peening/operations';
import { Problem } from '@hubwright/contracts/problems';
import { defineCommand } from '../../platform/command/command.ts';
import { requireAuthorisation } from '../people/public.ts';
import { judgeStrips, lotLocks, stripsOf, theLot } from './lot.ts';

/** Closing strips are kept as they were read. Within every band the lot is released; else each of its parts is held wherever it is. */
export const closeLot = defineCommand(peeningOperations.closePeeningLot, {
  locks: (input, tx) => lotLocks(tx, input.lotId),
  async execute(context) {
    const { tx, input, actor, now, today, expectedVersion } = context;
    const lot = await theLot(tx, input.lotId, expectedVersion);
    if (lot.state !== 'peened') throw new Problem('lot-not-peened', `${lot.number} is ${lot.state}`);
    const need = { process: 'shot-peening', level: 'perform', today } as const;
    const authorisation = await requireAuthorisation(tx, actor, need);
    const closing = stripsOf(lot.spec, input.closing, 'closing');
    const { released, reasons } = judgeStrips(lot.spec, lot.opening, closing);
    const state = released ? ('released' as const) : ('held' as const);
    const version = lot.version + 1;
    const read = { closing, reasons, closedBy: actor.personId, closedAt: now };
    await tx.peeningLot.update({ where: { id: lot.id }, data: { state, ...read, version } });
    if (released) await tx.peeningPart.updateMany({ where: { lotId: lot.id }, data: { open: false } });
    const steps = await tx.travelerStep.findMany({
      where: { id: { in: lot.parts.map(({ stepId }) => stepId) } },
      include: { traveler: true },
    });
    return {
      reply: { id: lot.id, version, state, reasons },
      subjects: [
        { kind: 'peening-lot', id: lot.id, before: lot.version, after: version },
        ...steps.map(({ travelerId }) => ({ kind: 'traveler', id: travelerId })),
        ...[...new Set(steps.map(({ traveler }) => traveler.workOrderId))].map((id) => ({ kind: 'work-order', id })),
      ],
      authorisation: { ...authorisation },
      facts: { number: lot.number, state, closing, reasons, travelers: steps.map(({ traveler }) => traveler.number) },
    };
  },
});
