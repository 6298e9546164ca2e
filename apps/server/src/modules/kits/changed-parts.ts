import type { Ask } from './ask.ts';

interface Row {
  readonly position: string;
  readonly settled: boolean;
  readonly nouns: readonly string[];
  readonly subjects: readonly { readonly kind: string; readonly id: string }[];
}

/** What commands wrote since the last look: the parts whose cover it may change, or everything. */
export interface News {
  readonly everything: boolean;
  /** What was written that may change what is foreseen: nothing, more or less demand, or also the lists it is told from. */
  readonly foreseen: 'same' | 'demand' | 'lists';
  readonly parts: readonly string[];
  readonly kits: readonly string[];
  readonly workOrders: readonly string[];
  readonly customers: readonly string[];
}

/** Rows that come by while a long transaction is open; more than this and reading all anew is cheaper. */
const mostRows = 2_000;
const newRowsSql = `
  SELECT transaction || '-' || id AS position, nouns, subjects,
    transaction < pg_snapshot_xmin(pg_current_snapshot())::text::bigint AS settled
  FROM outbox WHERE (transaction, id) > ($1::bigint, $2::bigint) ORDER BY transaction, id LIMIT ${mostRows}`;
const newestSql = `
  SELECT transaction || '-' || id AS position FROM outbox
  WHERE transaction < pg_snapshot_xmin(pg_current_snapshot())::text::bigint ORDER BY transaction DESC, id DESC LIMIT 1`;

const ofLotsSql = 'SELECT DISTINCT part_id AS id FROM lots WHERE id = ANY($1::uuid[])';
const ofOrdersSql = 'SELECT DISTINCT part_id AS id FROM purchase_order_lines WHERE order_id = ANY($1::uuid[])';
const ofKitsSql = `
  SELECT DISTINCT kl.part_id AS id FROM kit_lines kl JOIN kits k ON k.id = kl.kit_id
  WHERE k.id = ANY($1::uuid[]) OR k.work_order_id = ANY($2::uuid[])`;

/** Writes to nothing of these can change stock, orders, dates or who may have what: a kit keeps its list until it goes over to another. */
const quiet: ReadonlySet<string> = new Set([
  'people',
  'files',
  'records',
  'server',
  'processes',
  'units',
  'peening',
  'manuals',
]);
/** Writes to these may change what is foreseen for units that are not in work yet. */
const ahead: ReadonlySet<string> = new Set([
  ...[
    'customers',
    'manuals',
    'units',
    'quotes',
    'work-orders',
    'findings',
    'kits',
    'directives',
    'releases',
    'due-dates',
  ],
]);
const resolved = ['lot', 'part', 'order', 'kit', 'work-order', 'customer'] as const;
/** Subjects that stand beside one of those whenever stock or a kit line changes, and change nothing by themselves. */
const beside: ReadonlySet<string> = new Set([
  ...['person', 'person-time', 'traveler', 'traveler-step', 'finding', 'quote', 'unit', 'load', 'release', 'sign-off'],
  ...['instrument', 'equipment', 'bin', 'supplier', 'document', 'hold', 'aircraft', 'training'],
  // Whatever of these moves stock names its lots: what stands alone is paper, and what waits outside of the ledger.
  ...['vendor-order', 'vendor-line', 'held-delivery', 'directive', 'photo', 'blade-set', 'build', 'touch-up'],
  ...[
    'field-balance',
    'governor-run',
    'governor-program',
    'peening-machine',
    'peening-media',
    'peening-lot',
    'media-review',
  ],
  ...['model', 'manual', 'manual-revision', 'kit-list-draft', 'document-change', 'revision-change'],
  ...['calibration-review', 'equipment-doubt', 'training-item', 'shift-pattern'],
]);

/**
 * Follows the outbox, in which every command says what it was about in its own transaction. A row may become visible after a later
 * one was read, so rows are told apart one by one until every older transaction has ended.
 */
export class ChangedParts {
  private settled = '0-0';
  private ahead = new Set<string>();

  /** From here on; what was written before is not told. */
  async start(ask: Ask): Promise<void> {
    this.settled = (await ask<{ position: string }>(newestSql, []))[0]?.position ?? '0-0';
    this.ahead = new Set();
  }

  /** All that is visible now and was not told yet. Read the data after this: then it holds at least as much. */
  async next(ask: Ask): Promise<News> {
    const rows = await ask<Row>(newRowsSql, this.settled.split('-'));
    const fresh = rows.filter(({ position }) => !this.ahead.has(position));
    this.settled = rows.filter(({ settled }) => settled).at(-1)?.position ?? this.settled;
    this.ahead = new Set(rows.flatMap(({ position, settled }) => (settled ? [] : [position])));
    const loud = fresh.filter(({ nouns }) => nouns.some((noun) => !quiet.has(noun)));
    if (rows.length === mostRows || loud.some(isUnclear)) return { ...nothing, everything: true };
    const foreseen = foreseenBy(fresh.flatMap(({ nouns }) => nouns));
    return loud.length === 0 ? { ...nothing, foreseen } : { ...(await partsOf(ask, loud)), foreseen };
  }
}

const nothing: News = { everything: false, foreseen: 'same', parts: [], kits: [], workOrders: [], customers: [] };

function foreseenBy(nouns: readonly string[]): News['foreseen'] {
  if (nouns.includes('manuals')) return 'lists';
  return nouns.some((noun) => ahead.has(noun)) ? 'demand' : 'same';
}

/** About something that is not known to leave stock and kits alone, nor to name them. */
function isUnclear({ subjects }: Row): boolean {
  const known = (kind: string) => (resolved as readonly string[]).includes(kind);
  return !subjects.some(({ kind }) => known(kind)) && subjects.some(({ kind }) => !beside.has(kind));
}

async function partsOf(ask: Ask, rows: readonly Row[]): Promise<News> {
  const all = rows.flatMap(({ subjects }) => subjects);
  const ids = (wanted: (typeof resolved)[number]) => [
    ...new Set(all.flatMap(({ kind, id }) => (kind === wanted ? [id] : []))),
  ];
  const [kits, workOrders, lots, orders] = [ids('kit'), ids('work-order'), ids('lot'), ids('order')];
  const read = async (sql: string, parameters: readonly string[][]) =>
    parameters.every((list) => list.length === 0)
      ? []
      : (await ask<{ id: string }>(sql, parameters)).map(({ id }) => id);
  const parts = [
    ...ids('part'),
    ...(await read(ofLotsSql, [lots])),
    ...(await read(ofOrdersSql, [orders])),
    ...(await read(ofKitsSql, [kits, workOrders])),
  ];
  return { ...nothing, parts: [...new Set(parts)], kits, workOrders, customers: ids('customer') };
}
