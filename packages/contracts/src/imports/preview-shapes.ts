import { z } from 'zod';
import { id, instant, listOf } from '../values.ts';
import { importLimits } from './kinds.ts';

/** The two kinds of files a table may be; its bytes say which. */
export const tableTypes = [
  'text/csv',
  'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet',
  'application/octet-stream',
] as const;

/** Field by column, columns counted from 0: which column of the file is read as what. */
export const mapping = z.record(
  z.string().max(30),
  z
    .int()
    .min(0)
    .max(importLimits.columns - 1),
);

/** The same in an address: `field:column` pairs parted by commas. */
export const mappingText = z
  .string()
  .max(1_000)
  .regex(/^([A-Za-z]{1,30}:\d{1,2})(,[A-Za-z]{1,30}:\d{1,2})*$/, 'Write field:column, parted by commas');

export const importCounts = z
  .object({ new: z.int(), changed: z.int(), same: z.int(), wrong: z.int() })
  .meta({ id: 'ImportCounts' });
export const importVerdict = z.enum(['new', 'changed', 'same', 'wrong']).meta({ id: 'ImportVerdict' });

const planRow = z
  .object({
    /** In the file, the line of headings counted. */
    line: z.int(),
    verdict: importVerdict,
    cells: z.array(z.string()),
    errors: z.array(z.object({ field: z.string(), column: z.int().nullable(), detail: z.string() })),
    changes: z.array(z.object({ field: z.string(), from: z.string(), to: z.string() })),
  })
  .meta({ id: 'ImportRow' });

/** How each field came to its column; one that is only nearly named is to be looked at. */
export const howMapped = z.record(z.string(), z.enum(['remembered', 'named', 'near', 'chosen']));

export const previewShape = listOf(planRow).extend({
  id,
  header: z.array(z.string()),
  mapping,
  how: howMapped,
  /** Needed fields that no column is read as. */
  missing: z.array(z.string()),
  counts: importCounts,
});

export const uploadedShape = z.object({
  id,
  header: z.array(z.string()),
  rows: z.int(),
  mapping,
  keptUntil: instant,
});
