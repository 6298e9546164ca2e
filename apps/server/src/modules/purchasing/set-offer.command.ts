import { Problem } from '@hubwright/contracts/problems';
import { offerOperations } from '@hubwright/contracts/purchasing/offer-operations';
import { defineCommand } from '../../platform/command/command.ts';
import { found, sameVersion } from '../../platform/command/version.ts';
import { toDbDate } from '../../platform/database/dates.ts';

/** How a supplier sells a part, from now on. Orders already raised keep their prices. */
export const setOffer = defineCommand(offerOperations.setOffer, {
  locks: (input) => [`offer:${input.partId}:${input.supplierId}`],
  async execute({ tx, input, newId }) {
    const { partId, supplierId, seenVersion, ...terms } = input;
    const { validFrom, validUntil } = terms;
    if (validFrom && validUntil && validUntil < validFrom)
      throw new Problem('invalid-input', 'Nothing is changed.', {
        errors: [{ pointer: '/validUntil', detail: 'The last day comes before the first' }],
      });
    const part = found(await tx.part.findUnique({ where: { id: partId } }), 'This part number');
    const supplier = found(await tx.supplier.findUnique({ where: { id: supplierId } }), 'This supplier');
    const before = await tx.partOffer.findUnique({ where: { partId_supplierId: { partId, supplierId } } });
    sameVersion(before?.version ?? 0, seenVersion ?? 0);
    const version = (before?.version ?? 0) + 1;
    const id = before?.id ?? newId();
    const kept = {
      ...terms,
      validFrom: validFrom === null ? null : toDbDate(validFrom),
      validUntil: validUntil === null ? null : toDbDate(validUntil),
    };
    await tx.partOffer.upsert({
      where: { partId_supplierId: { partId, supplierId } },
      create: { id, partId, supplierId, ...kept, version },
      update: { ...kept, version },
    });
    return {
      reply: { id, version },
      subjects: [
        { kind: 'part', id: part.id },
        { kind: 'supplier', id: supplier.id },
      ],
      facts: { part: part.number, supplier: supplier.code, ...terms },
    };
  },
});
