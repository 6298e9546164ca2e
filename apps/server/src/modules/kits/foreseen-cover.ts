import type { SourceClass } from '@hubwright/contracts/inventory/operations';
import type { Foreseen, ForeseenKind } from '@hubwright/rules/foreseen';
import type { Cover } from '@hubwright/rules/shortage';
import type { LineRow } from './cover-rows.ts';

/** A part as far as what is foreseen of it goes. */
export interface ForeseenPartRow {
  readonly id: string;
  readonly number: string;
  readonly description: string;
  readonly issueUnit: string;
  readonly leadTimeDays: number;
  readonly minimumDaysAtBuild: number;
}

/** Put to the rule beside the lines of open kits. */
export type ForeseenDemand = Pick<
  LineRow,
  'acceptedSources' | 'customerId' | 'needBy' | 'leadTimeDays' | 'minimumDaysAtBuild'
> & { readonly id: string; readonly part: ForeseenPartRow; readonly pieces: number };

/** One month of one kind: what is expected, what is planned for it, and what of that nothing covers. */
export interface ForeseenMonth {
  readonly kind: ForeseenKind;
  readonly month: string;
  readonly needBy: string;
  readonly quantity: number;
  readonly pieces: number;
  readonly short: number;
  readonly orderBy: string | null;
}

/** What is foreseen of one part. */
export interface ForeseenCover {
  readonly part: ForeseenPartRow;
  readonly months: readonly ForeseenMonth[];
  readonly units: Readonly<Record<ForeseenKind, number>>;
}

/** What is foreseen of one part before stock is held against it. */
export interface ForeseenPart {
  readonly rows: readonly Foreseen[];
  readonly units: Readonly<Record<ForeseenKind, number>>;
}

const partsSql = `
  SELECT id, number, description, issue_unit AS "issueUnit", lead_time_days AS "leadTimeDays", minimum_days_at_build AS "minimumDaysAtBuild"
  FROM parts WHERE id = ANY($1::uuid[])`;

export { partsSql as foreseenPartsSql };

/** Nobody's own stock serves it: whoever comes has not come yet. */
const nobody = '';

export function foreseenDemands(
  parts: readonly ForeseenPartRow[],
  of: (partId: string) => ForeseenPart | undefined,
): ForeseenDemand[] {
  return parts.flatMap((part) =>
    (of(part.id)?.rows ?? [])
      .filter(({ pieces }) => pieces > 0)
      .map(({ id, sources, needBy, pieces }) => ({
        ...{ id, part, needBy, pieces, customerId: nobody },
        acceptedSources: sources.split('+') as SourceClass[],
        ...{ leadTimeDays: part.leadTimeDays, minimumDaysAtBuild: part.minimumDaysAtBuild },
      })),
  );
}

export function foreseenCovers(
  parts: readonly ForeseenPartRow[],
  of: (partId: string) => ForeseenPart | undefined,
  answer: Cover,
): ForeseenCover[] {
  const lines = new Map(answer.lines.map((line) => [line.demand, line]));
  return parts.flatMap((part) => {
    const foreseen = of(part.id);
    if (!foreseen) return [];
    const months = foreseen.rows.map(({ id, kind, month, needBy, quantity, pieces }) => {
      const line = lines.get(id);
      return { kind, month, needBy, quantity, pieces, short: line?.short ?? 0, orderBy: line?.orderBy ?? null };
    });
    return [{ part, months: added(months), units: foreseen.units }];
  });
}

/** What customers take differs, the month is one. */
function added(months: readonly ForeseenMonth[]): ForeseenMonth[] {
  const cells = new Map<string, ForeseenMonth>();
  for (const one of months) {
    const key = `${one.month} ${one.kind}`;
    const known = cells.get(key);
    if (!known) {
      cells.set(key, one);
      continue;
    }
    cells.set(key, {
      ...known,
      needBy: earlier(known.needBy, one.needBy) ?? one.needBy,
      quantity: known.quantity + one.quantity,
      pieces: known.pieces + one.pieces,
      short: known.short + one.short,
      orderBy: earlier(known.orderBy, one.orderBy),
    });
  }
  return [...cells.values()];
}

function earlier(one: string | null, other: string | null): string | null {
  return [one, other].filter((day) => day !== null).sort()[0] ?? null;
}
