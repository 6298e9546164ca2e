import type { ImportField } from '@hubwright/contracts/imports/fields';
import { csvText } from '@hubwright/rules/csv';

/** A table to fill in: the headings of its fields and one row of the invented shop. */
export function templateText(fields: readonly ImportField[]): string {
  return csvText(
    fields.map(({ title }) => title),
    [fields.map(({ example }) => example)],
  );
}
