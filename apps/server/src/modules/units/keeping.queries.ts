import type { Input, Reply } from '@hubwright/contracts/operation';
import type { keepingOperations } from '@hubwright/contracts/units/keeping-operations';
import { Inject, Injectable } from '@nestjs/common';
import { found } from '../../platform/command/version.ts';
import { fromDbDateOrNull } from '../../platform/database/dates.ts';
import { Reads } from '../../platform/database/reads.ts';
import { storageRestated } from './keeping.ts';

type Answer = Reply<typeof keepingOperations.unitKeeping>;

/** A unit is told of a few times a year at most. */
const most = 200;

@Injectable()
export class KeepingQueries {
  constructor(@Inject(Reads) private readonly reads: Reads) {}

  async of({ itemId }: Input<typeof keepingOperations.unitKeeping>): Promise<Answer> {
    const { models } = this.reads;
    found(await models.serializedItem.findUnique({ where: { id: itemId } }), 'This unit');
    const orderBy = [{ recordedAt: 'desc' as const }, { id: 'desc' as const }];
    const uses = await models.unitUse.findMany({ where: { itemId }, orderBy, take: most });
    const periods = await models.storagePeriod.findMany({
      where: { itemId },
      orderBy,
      take: most,
      include: { supersededBy: { select: { id: true } } },
    });
    const people = await models.person.findMany({
      where: { id: { in: [...new Set([...uses, ...periods].map(({ recordedBy }) => recordedBy))] } },
      select: { id: true, displayName: true },
    });
    const names = new Map(people.map(({ id, displayName }) => [id, displayName]));
    const by = (row: { recordedBy: string; recordedAt: Date }) => ({
      recordedBy: names.get(row.recordedBy) ?? '',
      recordedAt: row.recordedAt.toISOString(),
    });
    const said = uses.map((row) => ({
      ...{ id: row.id, use: row.useCategory as Answer['use'], madeOn: fromDbDateOrNull(row.madeOn) },
      ...{ basis: row.basis, ...by(row) },
    }));
    return {
      ...{ use: said[0]?.use ?? null, madeOn: said[0]?.madeOn ?? null, uses: said },
      storage: periods.map((row) => {
        const { itemId: _, preservation, ...days } = storageRestated(row);
        return {
          ...{ id: row.id, periodId: row.periodId, ...days, basis: row.basis, ...by(row) },
          preservation: preservation as Answer['storage'][number]['preservation'],
          state: row.supersededBy ? 'superseded' : row.withdrawn ? 'withdrawn' : 'stands',
        };
      }),
    };
  }
}
