import { isDate } from '@hubwright/rules/dates';
import { offerHolds, placeOffer } from '@hubwright/rules/replenishment';
import { Cells } from './cells.ts';
import { type DraftOffer, knownOffers, type OfferTerms, writeOffers } from './offers.ts';
import { type KnownPart, knownPlaces, partsNamed } from './parts.ts';
import { type Models, type Plan, planned, type RowChange, type Table, type TableRow } from './table.ts';

interface Known {
  readonly parts: ReadonlyMap<string, KnownPart>;
  readonly suppliers: ReadonlyMap<string, string>;
  /** By `supplier part`. */
  readonly offers: ReadonlyMap<string, readonly DraftOffer[]>;
  /** The last place in the order of asking that is taken, by part. */
  readonly asked: ReadonlyMap<string, number>;
  readonly today: string;
}
interface RowPlan {
  readonly isNew: boolean;
  readonly changes: readonly RowChange[];
}
interface Read {
  readonly row: TableRow;
  readonly cells: Cells;
  readonly part: KnownPart | undefined;
  readonly supplierId: string | undefined;
  readonly from: number;
  readonly unitPrice: string | undefined;
}
type Whole = Read & { readonly part: KnownPart; readonly supplierId: string };

const mostPrices = 12;
const wholes = {
  packSize: { least: 1, most: 100_000 },
  minimum: { least: 1, most: 1_000_000 },
  leadTimeDays: { least: 0, most: 1_000 },
  preference: { least: 1, most: 9 },
} as const;
type WholeField = keyof typeof wholes;
const days = ['validFrom', 'validUntil'] as const;

/**
 * Suppliers’ price lists: the rows of a supplier and a part that hold from the same day are one offer, taken as a whole. It takes the
 * place of the one that begins on that day; one that began earlier ends the day before.
 */
export async function planOffers(models: Models, table: Table): Promise<Plan> {
  const parts = await partsNamed(table);
  const { suppliers } = await knownPlaces(models, table, { bin: 'bin' });
  const { offers, asked } = await knownOffers(table.ask, { parts, suppliers });
  const known: Known = { parts, suppliers, offers, asked, today: table.today };
  const read = table.rows.map((row) => readRow(row, table, known));
  const planOf = new Map<Read, RowPlan>();
  const toWrite: DraftOffer[] = [];
  for (const [pair, lists] of listsOf(read.filter((one): one is Whole => !!one.part && !!one.supplierId))) {
    const drafts = [...(offers.get(pair) ?? [])];
    const inTime = [...lists].toSorted(([one], [other]) => one.localeCompare(other));
    for (const [, rows] of inTime) for (const [row, plan] of planList(rows, { drafts, known })) planOf.set(row, plan);
    toWrite.push(...drafts.filter(({ isChanged }) => isChanged));
  }
  return {
    rows: read.map((one) => {
      const { isNew = false, changes = [] } = planOf.get(one) ?? {};
      return planned(one.row, { errors: one.cells.errors, isNew, changes });
    }),
    write: (context) => writeOffers(context, toWrite),
  };
}

/** By supplier and part, then by the first day; a row that names none goes with the one above it. */
function listsOf(rows: readonly Whole[]): ReadonlyMap<string, ReadonlyMap<string, Whole[]>> {
  const pairs = new Map<string, Map<string, Whole[]>>();
  const above = new Map<string, string>();
  for (const row of rows) {
    const pair = `${row.supplierId} ${row.part.id}`;
    const from = row.cells.text('validFrom', 10) || above.get(pair) || '';
    above.set(pair, from);
    const lists = pairs.get(pair) ?? new Map<string, Whole[]>();
    lists.set(from, [...(lists.get(from) ?? []), row]);
    pairs.set(pair, lists);
  }
  return pairs;
}

function readRow(row: TableRow, { mapping }: Table, { parts, suppliers }: Known): Read {
  const cells = new Cells(mapping, row.cells);
  const code = cells.needed('supplier', 40).toUpperCase();
  const supplierId = suppliers.get(code);
  if (code && !supplierId) cells.wrong('supplier', `There is no supplier ${code}`);
  const number = cells.needed('number', 60).toUpperCase();
  const part = parts.get(number);
  if (number && !part) cells.wrong('number', `There is no part ${number}; import the part numbers first`);
  const unitPrice = cells.needed('unitPrice') ? cells.price('unitPrice') : undefined;
  const from = cells.whole('from', { least: 1, most: 1_000_000 }) ?? 1;
  for (const field of days) {
    const text = cells.text(field, 10);
    if (text && !isDate(text)) cells.wrong(field, `“${text}” is no date: write it as 2026-11-30`);
  }
  return { row, cells, part, supplierId, from, unitPrice };
}

interface Among {
  /** The offers of this supplier and part; what the list changes is changed here. */
  readonly drafts: DraftOffer[];
  readonly known: Known;
}

/** Adds what is wrong between the rows of one offer to its cells, and says of each row what it changes. */
function planList(rows: readonly Whole[], { drafts, known }: Among): (readonly [Read, RowPlan])[] {
  const [first] = rows;
  if (!first) return [];
  const before = takenPlaceOf(first, { drafts, known });
  const terms = termsOf(rows, { before: before?.terms, beside: drafts.at(-1)?.terms, known });
  refuseUnfit(rows, { terms, before: before?.terms, today: known.today });
  const ended = endEarlier(first, { terms, others: drafts.filter((one) => one !== before) });
  const changes = [...(before ? changesOf(before.terms, terms) : []), ...ended];
  const { part, supplierId } = first;
  if (!before) drafts.push({ id: undefined, version: 0, partId: part.id, supplierId, terms, isChanged: true });
  else if (changes.length > 0) Object.assign(before, { terms, isChanged: true });
  return rows.map((one) => [one, { isNew: !before, changes: one === first ? changes : [] }] as const);
}

/** The offer that begins on the same day; where the list names no day, the one that holds now, or the last that did. */
function takenPlaceOf({ cells }: Whole, { drafts, known }: Among): DraftOffer | undefined {
  const from = cells.text('validFrom', 10) || null;
  const same = drafts.find(({ terms }) => terms.validFrom === from);
  if (from !== null) return same;
  const unnamed = drafts.find(({ terms }) => offerHolds(terms, known.today)) ?? drafts.at(-1);
  return cells.has('validFrom') ? (same ?? unnamed) : unnamed;
}

/** What began earlier ends the day before, and the row says so; what begins later is in the way. */
function endEarlier(
  { cells }: Whole,
  { terms, others }: { terms: OfferTerms; others: readonly DraftOffer[] },
): RowChange[] {
  const isBackwards = terms.validFrom && terms.validUntil && terms.validUntil < terms.validFrom;
  if (isBackwards || !(terms.validFrom === null || isDate(terms.validFrom))) return [];
  const held = others.map((draft) => ({ draft, ...draft.terms }));
  const { ends, inTheWay } = placeOffer(held, terms);
  for (const { validFrom } of inTheWay) {
    if (validFrom === null)
      cells.wrong('validFrom', 'Other prices hold from the beginning: name the first day of these');
    else cells.wrong('validUntil', `Other prices begin on ${validFrom}: name a last day before it`);
  }
  return ends.map(({ of: { draft }, validUntil }) => {
    const from = `${draft.terms.validUntil ?? 'no end'} (the prices before)`;
    Object.assign(draft, { terms: { ...draft.terms, validUntil }, isChanged: true });
    return { field: 'validUntil', from, to: `${validUntil} (the prices before)` };
  });
}

/** What the rows say together; where they are silent, what held before, or what is on record of the part. */
function termsOf(
  rows: readonly Whole[],
  { before, beside, known }: { before: OfferTerms | undefined; beside: OfferTerms | undefined; known: Known },
): OfferTerms {
  const part = rows[0]?.part as KnownPart;
  const next = Math.min(9, (known.asked.get(part.id) ?? 0) + 1);
  const usual = before ??
    beside ?? {
      packSize: part.packSize,
      minimum: 1,
      leadTimeDays: part.leadTimeDays,
      preference: next,
      supplierPartNumber: '',
    };
  const whole = (field: WholeField) => {
    const said = agreed(rows, field, ({ cells }) => cells.whole(field, wholes[field]));
    return said ?? usual[field];
  };
  const text = (field: string, most: number) =>
    agreed(rows, field, ({ cells }) => cells.text(field, most) || undefined);
  const day = (field: (typeof days)[number]) =>
    rows[0]?.cells.has(field) ? (text(field, 10) ?? null) : (before?.[field] ?? null);
  return {
    ...{ packSize: whole('packSize'), minimum: whole('minimum') },
    ...{ leadTimeDays: whole('leadTimeDays'), preference: whole('preference') },
    supplierPartNumber: text('supplierPartNumber', 60) ?? usual.supplierPartNumber,
    ...{ validFrom: day('validFrom'), validUntil: day('validUntil') },
    breaks: rows
      .map(({ from, unitPrice }) => ({ from, unitPrice: unitPrice ?? '0' }))
      .toSorted((one, other) => one.from - other.from),
  };
}

/** What the first row that says something says; a later row that says otherwise is wrong at its cell. */
function agreed<T>(rows: readonly Whole[], field: string, read: (row: Whole) => T | undefined): T | undefined {
  let said: { readonly value: T; readonly line: number } | undefined;
  for (const one of rows) {
    const value = read(one);
    if (value === undefined) continue;
    if (said && said.value !== value) one.cells.wrong(field, `Line ${said.line} says ${said.value} of the same offer`);
    said ??= { value, line: one.row.line };
  }
  return said?.value;
}

function refuseUnfit(
  rows: readonly Whole[],
  { terms, before, today }: { terms: OfferTerms; before: OfferTerms | undefined; today: string },
): void {
  const first = rows[0] as Whole;
  const { validFrom, validUntil, minimum, breaks } = terms;
  const seen = new Map<number, number>();
  for (const { from, row, cells } of rows) {
    const line = seen.get(from);
    if (line !== undefined) cells.wrong('from', `Line ${line} has the price from ${from} on already`);
    seen.set(from, line ?? row.line);
  }
  for (const { cells } of rows.slice(mostPrices)) cells.wrong('from', `An offer has at most ${mostPrices} prices`);
  const lowest = breaks[0]?.from ?? 1;
  if (lowest > minimum)
    first.cells.wrong('from', `No price for fewer than ${lowest}: write one, or ${lowest} as the least quantity`);
  if (validFrom && validUntil && validUntil < validFrom)
    first.cells.wrong('validUntil', 'The last day comes before the first');
  else if (validUntil && validUntil < today && before?.validUntil !== validUntil)
    first.cells.wrong('validUntil', 'These prices have run out');
}

const shown = ['supplierPartNumber', 'packSize', 'minimum', 'leadTimeDays', 'preference', ...days] as const;
const pricesText = (breaks: OfferTerms['breaks']) =>
  breaks.map(({ from, unitPrice }) => (from === 1 ? unitPrice : `${unitPrice} from ${from}`)).join('; ');

function changesOf(before: OfferTerms, after: OfferTerms): RowChange[] {
  const [old, prices] = [pricesText(before.breaks), pricesText(after.breaks)];
  return [
    ...(old === prices ? [] : [{ field: 'unitPrice', from: old, to: prices }]),
    ...shown.flatMap((field) =>
      before[field] === after[field]
        ? []
        : [{ field, from: String(before[field] ?? ''), to: String(after[field] ?? '') }],
    ),
  ];
}
