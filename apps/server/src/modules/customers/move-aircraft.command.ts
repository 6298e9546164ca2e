import { ownerOperations } from '@hubwright/contracts/customers/owner-operations';
import { Problem } from '@hubwright/contracts/problems';
import { defineCommand } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';
import { fromDbDate, toDbDate } from '../../platform/database/dates.ts';
import { refuseFuture } from './meter-points.ts';

/** Sold, or run by another: readings and installations stay with the aircraft, orders and papers with whoever had the work done. */
export const moveAircraft = defineCommand(ownerOperations.moveAircraft, {
  locks: (input) => [`aircraft:${input.aircraftId}`],
  async execute({ tx, input, now, today, actor, newId }) {
    const { aircraftId, customerId, on, basis } = input;
    const aircraft = found(
      await tx.aircraft.findUnique({ where: { id: aircraftId }, include: { customer: true } }),
      'This aircraft',
    );
    const next = found(await tx.customer.findUnique({ where: { id: customerId } }), 'This customer');
    const { registration, customer: before } = aircraft;
    if (before.id !== input.fromCustomerId)
      throw new Problem('owner-changed', `${registration} is ${before.name}’s by now`);
    if (before.id === next.id) throw new Problem('owner-changed', `${registration} is ${next.name}’s already`);
    refuseFuture(on, today, '/on');
    const last = await tx.aircraftMove.findFirst({
      where: { aircraftId },
      orderBy: [{ movedOn: 'desc' }, { id: 'desc' }],
    });
    if (last && on < fromDbDate(last.movedOn))
      throw new Problem('owner-changed', `${registration} changed hands on ${fromDbDate(last.movedOn)} already`, {}, [
        { pointer: '/on', detail: 'Before its last change' },
      ]);
    const id = newId();
    await tx.aircraftMove.create({
      data: {
        ...{ id, aircraftId, basis, fromCustomerId: before.id, toCustomerId: next.id },
        ...{ movedOn: toDbDate(on), recordedBy: actor.personId, recordedAt: now },
      },
    });
    await tx.aircraft.update({ where: { id: aircraftId }, data: { customerId: next.id } });
    return {
      reply: { id, version: 1 },
      subjects: [
        { kind: 'aircraft', id: aircraftId },
        { kind: 'customer', id: before.id },
        { kind: 'customer', id: next.id },
      ],
      facts: { registration, from: before.code, to: next.code, on },
      reason: basis,
    };
  },
});
