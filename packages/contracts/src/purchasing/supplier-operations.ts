import { z } from 'zod';
import { command, read } from '../operation.ts';
import { changed, date, id, line, listOf, page } from '../values.ts';

const supplierRow = z
  .object({
    id,
    code: z.string(),
    name: z.string(),
    email: z.string(),
    phone: z.string(),
    approvedUntil: date.nullable(),
    version: z.int(),
  })
  .meta({ id: 'SupplierRow' });

export const supplierOperations = {
  listSuppliers: read({
    id: 'list-suppliers',
    noun: 'purchasing',
    path: '/api/suppliers',
    access: 'signed-in',
    summary: 'Suppliers and until when each is approved',
    input: z.strictObject({ ...page }),
    output: listOf(supplierRow),
  }),
  addSupplier: command({
    id: 'add-supplier',
    noun: 'purchasing',
    path: '/api/suppliers',
    access: ['parts-room', 'manager'],
    summary: 'Add a supplier; `approvedUntil` is the last good day, which only a manager may give here',
    input: z.strictObject({
      code: z
        .string()
        .trim()
        .toUpperCase()
        .regex(/^[A-Z0-9][A-Z0-9-]{1,11}$/, 'Use 2 to 12 letters, digits or dashes'),
      name: line,
      email: z.union([z.email(), z.literal('')]).default(''),
      phone: z.string().trim().max(40).default(''),
      approvedUntil: date.optional(),
    }),
    output: changed,
  }),
} as const;
