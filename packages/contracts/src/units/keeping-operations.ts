import { z } from 'zod';
import { preservation, useCategory } from '../manuals/service-limits.ts';
import { command, read } from '../operation.ts';
import { changed, date, id, instant, line } from '../values.ts';

const desk = ['front-desk', 'manager', 'inspector'] as const;

const useRow = z
  .object({
    id,
    /** Null where nobody said it, or where it is not known any more. */
    use: useCategory.nullable(),
    madeOn: date.nullable(),
    basis: z.string(),
    recordedBy: z.string(),
    recordedAt: instant,
  })
  .meta({ id: 'UnitUseRow' });

const storageRow = z
  .object({
    id,
    periodId: id,
    preservation,
    from: date,
    to: date.nullable(),
    inspectedOn: date.nullable(),
    basis: z.string(),
    recordedBy: z.string(),
    recordedAt: instant,
    state: z.enum(['stands', 'superseded', 'withdrawn']),
  })
  .meta({ id: 'StorageRow' });

const known = { periodId: id, supersedesId: id };

/** How a unit is used, how old it is, and when it lay in storage: what manuals make its limits depend on. */
export const keepingOperations = {
  unitKeeping: read({
    id: 'unit-keeping',
    noun: 'units',
    path: '/api/units/:itemId/keeping',
    access: 'signed-in',
    summary: 'How a unit is used, when it was made, and its times in storage, newest first',
    input: z.strictObject({ itemId: id }),
    output: z
      .object({
        use: useCategory.nullable(),
        madeOn: date.nullable(),
        uses: z.array(useRow),
        storage: z.array(storageRow),
      })
      .meta({ id: 'UnitKeeping' }),
  }),
  sayUse: command({
    id: 'say-use',
    noun: 'units',
    path: '/api/units/:itemId/use',
    access: desk,
    summary: 'Put on record how a unit is used and when it was made; what is left out is not known',
    input: z.strictObject({ itemId: id, use: useCategory.optional(), madeOn: date.optional(), basis: line }),
    output: changed,
    touches: ['due-dates'],
    problems: ['date-ahead'],
  }),
  putInStorage: command({
    id: 'put-in-storage',
    noun: 'units',
    path: '/api/units/:itemId/storage',
    access: desk,
    summary: 'Put on record that a unit lies or lay in storage, and how it was preserved',
    input: z.strictObject({ itemId: id, preservation, from: date, to: date.optional(), basis: line }),
    output: changed,
    touches: ['due-dates'],
    problems: ['date-ahead', 'storage-overlaps'],
  }),
  takeOutOfStorage: command({
    id: 'take-out-of-storage',
    noun: 'units',
    path: '/api/storage/:periodId/end',
    access: desk,
    summary: 'Put on record that a unit was taken out of storage',
    input: z.strictObject({ ...known, to: date, basis: line }),
    output: changed,
    touches: ['due-dates'],
    problems: ['date-ahead', 'storage-superseded', 'storage-overlaps'],
  }),
  inspectInStorage: command({
    id: 'inspect-in-storage',
    noun: 'units',
    path: '/api/storage/:periodId/inspection',
    access: desk,
    summary: 'Put on record that a unit was inspected and preserved anew while it lay in storage',
    input: z.strictObject({ ...known, on: date, basis: line }),
    output: changed,
    touches: ['due-dates'],
    problems: ['date-ahead', 'storage-superseded'],
  }),
  withdrawStorage: command({
    id: 'withdraw-storage',
    noun: 'units',
    path: '/api/storage/:periodId/withdraw',
    access: desk,
    summary: 'Say that a time in storage never was; it stays on record and counts for nothing',
    input: z.strictObject({ ...known, reason: line }),
    output: changed,
    touches: ['due-dates'],
    problems: ['storage-superseded'],
  }),
} as const;
