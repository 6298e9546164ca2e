import { meterOperations } from '@hubwright/contracts/customers/meter-operations';
import { Problem } from '@hubwright/contracts/problems';
import { defineCommand } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';

/** A wrong reading stays on record with the reason, and counts for nothing from then on. */
export const strikeReading = defineCommand(meterOperations.strikeReading, {
  async locks(input, tx) {
    const reading = await tx.aircraftReading.findUnique({ where: { id: input.readingId } });
    return reading ? [`aircraft:${reading.aircraftId}`] : [];
  },
  async execute({ tx, input, now, actor }) {
    const { readingId, reason } = input;
    const reading = found(
      await tx.aircraftReading.findUnique({ where: { id: readingId }, include: { struck: true } }),
      'This reading',
    );
    if (reading.struck) throw new Problem('reading-struck', `It was marked because: ${reading.struck.reason}`);
    await tx.struckReading.create({ data: { readingId, reason, recordedBy: actor.personId, recordedAt: now } });
    return {
      reply: { id: readingId, version: 2 },
      subjects: [{ kind: 'aircraft', id: reading.aircraftId }],
      facts: { meter: reading.meter, hoursTenths: reading.hoursTenths },
      reason,
    };
  },
});
