import { canonicalJson } from '@hubwright/rules/chain';
import { type AnchorBody, hashOfText, headLine, Lines, noAnchor, rowLine } from './anchor.ts';
import { type Purged, rowsKey } from './check-purges.ts';
import { type KeyStatement, keyId, signatureHolds } from './shop-key.ts';
import type { AnchorRow, RecordSource } from './source.ts';

type Found = (place: string, reason: string) => void;
interface KnownKey {
  readonly publicKey: string;
  readonly order: number;
}

/** Checks each key's introduction; answers the public keys by name, oldest first. A break in succession is a notice. */
export async function checkKeys(source: RecordSource, fault: Found, notice: Found): Promise<Map<string, KnownKey>> {
  const known = new Map<string, KnownKey>();
  let before: KeyStatement | undefined;
  for (const row of await source.keys()) {
    const place = `shop key ${row.id}`;
    const statement = parsed<KeyStatement>(row.statement);
    if (!statement || statement.id !== row.id || keyId(statement.publicKey) !== row.id)
      fault(place, 'the statement is not about this key');
    else if (!signatureHolds(statement.publicKey, row.statement, row.signature))
      fault(place, 'the statement was changed after it was signed');
    else {
      known.set(row.id, { publicKey: statement.publicKey, order: known.size });
      if (before && !row.previousSignature)
        notice(place, 'began without the word of the key before it: ask the shop whether it made this key');
      else if (before && !takesOver(statement, before, row)) fault(place, 'the key before it did not sign it');
      before = statement;
    }
  }
  return known;
}

function takesOver(
  statement: KeyStatement,
  before: KeyStatement,
  row: { statement: string; previousSignature: string | null },
): boolean {
  return (
    statement.previous === before.id && signatureHolds(before.publicKey, row.statement, row.previousSignature ?? '')
  );
}

/** Checks every anchor's own chain, signature and digests. Answers how many there are. */
export async function checkAnchors(
  source: RecordSource,
  { keys, purged }: { keys: ReadonlyMap<string, KnownKey>; purged: Purged['rows'] },
  fault: Found,
): Promise<number> {
  const bodies = new Map<number, AnchorBody>();
  let last: { row: AnchorRow; order: number } | undefined;
  for await (const row of source.anchors()) {
    const key = keys.get(row.keyId);
    const body = parsed<AnchorBody>(row.body);
    const reason = misfit(row, body, { last, key });
    if (reason) fault(`anchor ${row.sequence}`, reason);
    if (body) bodies.set(row.sequence, body);
    last = { row, order: key?.order ?? last?.order ?? 0 };
  }
  await checkHeads(source, bodies, fault);
  for (const table of await tablesOf(source, bodies)) await checkRows(source, { table, bodies, purged }, fault);
  return bodies.size;
}

function misfit(
  row: AnchorRow,
  body: AnchorBody | undefined,
  { last, key }: { last: { row: AnchorRow; order: number } | undefined; key: KnownKey | undefined },
): string | undefined {
  const expected = (last?.row.sequence ?? 0) + 1;
  if (row.sequence !== expected) return `anchor ${expected} is missing before this one`;
  if (!body || body.sequence !== row.sequence || body.key !== row.keyId || hashOfText(row.body) !== row.hash)
    return 'the anchor was changed';
  if (body.previous !== (last?.row.hash ?? noAnchor)) return 'it does not follow the anchor before';
  if (!key) return `its key ${row.keyId} is not one of the shop's`;
  if (!signatureHolds(key.publicKey, row.body, row.signature)) return 'the signature is not of this text';
  if (last && key.order < last.order) return 'it is signed by a key that had been replaced';
  return undefined;
}

async function checkHeads(source: RecordSource, bodies: Map<number, AnchorBody>, fault: Found): Promise<void> {
  const found = new Map<number, Lines>();
  for await (const row of source.anchoredByAnchor()) linesOf(found, row.anchor).add(headLine(row));
  for (const [sequence, body] of bodies) {
    const { digest } = linesOf(found, sequence).end();
    if (digest !== body.heads.digest) fault(`anchor ${sequence}`, 'its list of chains was changed');
  }
}

async function tablesOf(source: RecordSource, bodies: Map<number, AnchorBody>): Promise<string[]> {
  const named = [...bodies.values()].flatMap((body) => body.rows.map(({ table }) => table));
  return [...new Set([...named, ...(await source.sealedTables())])];
}

/** The rows one table's entries wrote, anchor by anchor, against what the anchor saw. */
async function checkRows(
  source: RecordSource,
  { table, bodies, purged }: { table: string; bodies: Map<number, AnchorBody>; purged: Purged['rows'] },
  fault: Found,
): Promise<void> {
  const found = new Map<number, Lines>();
  const columns = (anchor: number) => bodies.get(anchor)?.rows.find((sealed) => sealed.table === table)?.columns;
  for await (const row of source.sealedRows(table))
    linesOf(found, row.anchor).add(rowLine(row, columns(row.anchor) ?? []));
  for (const [sequence, body] of bodies) {
    const sealed = body.rows.find((one) => one.table === table);
    const now = linesOf(found, sequence).end();
    const expected = sealed && (purged.get(rowsKey(table, sequence)) ?? sealed);
    if (!expected || now.digest === expected.digest) continue;
    fault(`table ${table}, rows covered by anchor ${sequence} (until ${body.at})`, changed(expected.count, now.count));
  }
}

function changed(before: number, now: number): string {
  if (now < before) return `${before - now} of ${before} rows are gone`;
  if (now > before) return `${now - before} rows were added to ${before}`;
  return `a row of ${before} was changed`;
}

function linesOf(all: Map<number, Lines>, anchor: number): Lines {
  const lines = all.get(anchor) ?? new Lines();
  all.set(anchor, lines);
  return lines;
}

function parsed<T>(text: string): T | undefined {
  try {
    const value = JSON.parse(text) as T;
    return canonicalJson(value) === text ? value : undefined;
  } catch {
    return undefined;
  }
}
