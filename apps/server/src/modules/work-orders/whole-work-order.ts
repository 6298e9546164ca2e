import type { Reads } from '../../platform/database/reads.ts';
import { partIncluded } from './unit-shapes.ts';

/** A work order with all that hangs on it; the parts of its unit as they sit now. */
export function readWhole(reads: Reads, id: string) {
  return reads.models.workOrder.findUnique({
    where: { id },
    include: {
      model: true,
      revision: { include: { manual: true } },
      aircraft: true,
      application: true,
      unit: {
        include: {
          times: { orderBy: [{ recordedOn: 'desc' }, { recordedAt: 'desc' }], take: 1 },
          parts: { where: { toDate: null }, orderBy: { position: 'asc' }, include: partIncluded },
        },
      },
      quotes: { orderBy: { createdAt: 'asc' } },
      holds: { orderBy: { placedAt: 'asc' } },
      looseItems: { orderBy: { id: 'asc' } },
      travelers: {
        orderBy: { number: 'asc' },
        include: { steps: { orderBy: { sequence: 'asc' }, select: { title: true, state: true } } },
      },
      findings: { orderBy: { number: 'asc' } },
    },
  });
}
export type WholeWorkOrder = NonNullable<Awaited<ReturnType<typeof readWhole>>>;
