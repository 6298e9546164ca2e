import type { Input } from '@hubwright/contracts/operation';
import { Problem } from '@hubwright/contracts/problems';
import { offerOperations } from '@hubwright/contracts/purchasing/offer-operations';
import { placeOffer } from '@hubwright/rules/replenishment';
import { defineCommand } from '../../platform/command/command.ts';
import { found, sameVersion } from '../../platform/command/version.ts';
import type { Tx } from '../../platform/database/client.ts';
import { fromDbDate, toDbDate } from '../../platform/database/dates.ts';

type Asked = Input<typeof offerOperations.setOffer>;
type Known = Awaited<ReturnType<typeof offersOf>>[number];

/** How a supplier sells a part, from now or from a day on. Orders already raised keep their prices. */
export const setOffer = defineCommand(offerOperations.setOffer, {
  // With the lock of the imports: two offers of a pair are never judged side by side, whichever way they come.
  locks: (input) => ['imports', `offer:${input.partId}:${input.supplierId}`],
  async execute({ tx, input, newId }) {
    const { partId, supplierId, offerId, seenVersion, ...terms } = input;
    refuseBackwards(terms);
    const part = found(await tx.part.findUnique({ where: { id: partId } }), 'This part number');
    const supplier = found(await tx.supplier.findUnique({ where: { id: supplierId } }), 'This supplier');
    const all = await offersOf(tx, input);
    const before = offerId
      ? found(
          all.find(({ id }) => id === offerId),
          'This offer',
        )
      : all.find(({ validFrom }) => validFrom === terms.validFrom);
    sameVersion(before?.version ?? 0, seenVersion ?? 0);
    const ended = await endEarlier(
      tx,
      all.filter((one) => one !== before),
      { terms, supplier: supplier.name },
    );
    const version = (before?.version ?? 0) + 1;
    const id = before?.id ?? newId();
    const { validFrom, validUntil } = terms;
    const kept = {
      ...terms,
      validFrom: validFrom && toDbDate(validFrom),
      validUntil: validUntil && toDbDate(validUntil),
    };
    await tx.partOffer.upsert({
      where: { id },
      create: { id, partId, supplierId, ...kept, version },
      update: { ...kept, version },
    });
    return {
      reply: { id, version },
      subjects: [
        { kind: 'part', id: part.id },
        { kind: 'supplier', id: supplier.id },
      ],
      facts: { part: part.number, supplier: supplier.code, ...terms, ...(ended.length > 0 ? { ended } : {}) },
    };
  },
});

function refuseBackwards({ validFrom, validUntil }: Pick<Asked, 'validFrom' | 'validUntil'>): void {
  if (validFrom && validUntil && validUntil < validFrom)
    throw new Problem('invalid-input', 'Nothing is changed.', {
      errors: [{ pointer: '/validUntil', detail: 'The last day comes before the first' }],
    });
}

async function offersOf(tx: Tx, { partId, supplierId }: Pick<Asked, 'partId' | 'supplierId'>) {
  const rows = await tx.partOffer.findMany({ where: { partId, supplierId } });
  return rows.map(({ id, version, validFrom, validUntil }) => ({
    ...{ id, version },
    validFrom: validFrom && fromDbDate(validFrom),
    validUntil: validUntil && fromDbDate(validUntil),
  }));
}

/** What began earlier ends the day before; what begins later is never shortened unasked. */
async function endEarlier(
  tx: Tx,
  others: readonly Known[],
  { terms, supplier }: { terms: Pick<Asked, 'validFrom' | 'validUntil'>; supplier: string },
) {
  const { ends, inTheWay } = placeOffer(others, terms);
  const [first] = inTheWay.toSorted((one, other) => (one.validFrom ?? '').localeCompare(other.validFrom ?? ''));
  if (first) {
    const since = first.validFrom ? `from ${first.validFrom} on` : 'from the beginning';
    throw new Problem('offers-overlap', `Another offer of ${supplier} holds ${since}`, { validFrom: first.validFrom });
  }
  for (const { of, validUntil } of ends)
    await tx.partOffer.update({
      where: { id: of.id },
      data: { validUntil: toDbDate(validUntil), version: of.version + 1 },
    });
  return ends.map(({ of, validUntil }) => ({ offer: of.id, validUntil }));
}
