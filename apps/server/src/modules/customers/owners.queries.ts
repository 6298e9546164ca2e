import type { ownerOperations } from '@hubwright/contracts/customers/owner-operations';
import type { Reply } from '@hubwright/contracts/operation';
import { Inject, Injectable } from '@nestjs/common';
import { found } from '../../platform/command/version.ts';
import { fromDbDate } from '../../platform/database/dates.ts';
import { Reads } from '../../platform/database/reads.ts';

const named = { select: { id: true, code: true, name: true } } as const;

@Injectable()
export class OwnerQueries {
  constructor(@Inject(Reads) private readonly reads: Reads) {}

  /** Both pages say it: that of whoever had it, and that of whoever has it now. */
  async moves(customerId: string): Promise<Reply<typeof ownerOperations.aircraftMoves>> {
    const { models } = this.reads;
    found(await models.customer.findUnique({ where: { id: customerId }, select: { id: true } }), 'This customer');
    const rows = await models.aircraftMove.findMany({
      where: { OR: [{ fromCustomerId: customerId }, { toCustomerId: customerId }] },
      orderBy: [{ movedOn: 'desc' }, { id: 'desc' }],
      take: 200,
      include: { aircraft: { select: { id: true, registration: true } }, from: named, to: named },
    });
    const people = await models.person.findMany({
      where: { id: { in: [...new Set(rows.map(({ recordedBy }) => recordedBy))] } },
      select: { id: true, displayName: true },
    });
    const names = new Map(people.map(({ id, displayName }) => [id, displayName]));
    return {
      rows: rows.map(({ id, aircraft, from, to, movedOn, basis, recordedBy, recordedAt }) => ({
        ...{ id, aircraft, from, to, basis, on: fromDbDate(movedOn) },
        recordedBy: names.get(recordedBy) ?? '',
        recordedAt: recordedAt.toISOString(),
      })),
    };
  }
}
