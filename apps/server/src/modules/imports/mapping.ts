import type { ImportField } from '@hubwright/contracts/imports/fields';
import { type HowMatched, matchHeadings, plainHeading } from '@hubwright/rules/headings';
import type { Tx } from '../../platform/database/client.ts';
import type { Reads } from '../../platform/database/reads.ts';
import type { Mapping } from './table.ts';

/** Whose choice of columns is meant: the shop's own for a kind of table, or a customer's. */
export interface MappingOwner {
  readonly kind: string;
  readonly customerId: string | null;
}

interface Mapped {
  readonly mapping: Mapping;
  /** `chosen`: by the person who looks at it now. */
  readonly how: Readonly<Record<string, HowMatched | 'chosen'>>;
}

/** Which column is read as which field: as asked for now, else as it was chosen for such headings before, else by the headings. */
export async function mappedColumns(
  models: Pick<Reads['models'], 'rememberedHeading'>,
  of: MappingOwner & { readonly header: readonly string[]; readonly fields: readonly ImportField[] },
  asked?: string,
): Promise<Mapped> {
  const { kind, customerId, header, fields } = of;
  if (asked !== undefined) {
    const mapping = usableMapping(fields, mappingIn(asked), header.length);
    return { mapping, how: Object.fromEntries(Object.keys(mapping).map((field) => [field, 'chosen' as const])) };
  }
  const said = await models.rememberedHeading.findMany({
    where: { kind, owner: customerId ?? '', heading: { in: header.map(plainHeading) } },
  });
  const { mapping, how } = matchHeadings(
    header,
    fields,
    Object.fromEntries(said.map(({ heading, field }) => [heading, field])),
  );
  return { mapping, how };
}

/** Keeps the choice for the next table with such headings, also which columns were left unread. */
export async function rememberMapping(
  { tx, now }: { readonly tx: Tx; readonly now: Date },
  { kind, customerId }: MappingOwner,
  { header, mapping }: { readonly header: readonly string[]; readonly mapping: Mapping },
): Promise<void> {
  const fieldOf = new Map(Object.entries(mapping).map(([field, at]) => [at, field]));
  const said = new Map<string, string>();
  for (const [at, head] of header.entries()) {
    const heading = plainHeading(head);
    if (heading !== '') said.set(heading, fieldOf.get(at) ?? said.get(heading) ?? '');
  }
  const rows = [...said].map(([heading, field]) => ({ heading, field }));
  await tx.$executeRaw`
    INSERT INTO remembered_headings (kind, owner, heading, field, remembered_at)
    SELECT ${kind}, ${customerId ?? ''}, heading, field, ${now}
    FROM jsonb_to_recordset(${JSON.stringify(rows)}::jsonb) AS n(heading text, field text)
    ON CONFLICT (kind, owner, heading) DO UPDATE SET field = excluded.field, remembered_at = excluded.remembered_at`;
}

/** Fields of the kind that a column of the table is read as; anything else in a mapping is dropped. */
export function usableMapping(fields: readonly ImportField[], mapping: Mapping, width: number): Mapping {
  const known = new Set(fields.map(({ field }) => field));
  return Object.fromEntries(Object.entries(mapping).filter(([field, at]) => known.has(field) && at < width));
}

/** Needed fields that no column is read as. */
export function missingColumns(fields: readonly ImportField[], mapping: Mapping): ImportField[] {
  return fields.filter(({ field, required }) => required && mapping[field] === undefined);
}

function mappingIn(text: string): Mapping {
  return Object.fromEntries(
    text.split(',').map((pair) => {
      const [field = '', column] = pair.split(':');
      return [field, Number(column)];
    }),
  );
}
