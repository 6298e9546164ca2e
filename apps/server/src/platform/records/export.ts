import { createHash } from 'node:crypto';
import { createReadStream, createWriteStream } from 'node:fs';
import { copyFile, mkdir, readdir, rename, rm, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { canonicalJson } from '@hubwright/rules/chain';
import pg from 'pg';
import { DatabaseSource, plainTexts } from './database-source.ts';
import { exportFiles, exportFormat, type Manifest, type ManifestFile, sealedFile, storedFile } from './folder.ts';
import { type KeyFolder, type ShopKey, signText } from './shop-key.ts';
import { takeAnchor } from './take-anchor.ts';

export interface ExportOptions {
  readonly url: string;
  readonly filesFolder: string;
  readonly keys: KeyFolder;
  readonly at: Date;
  /** The stand-alone verifier, one file. */
  readonly verifier: string;
}

/**
 * Writes everything that is needed to check the records without this program: chains, anchors, keys, rows that are only
 * added, stored files, the verifier. Built beside its place and moved there whole. @throws when the folder holds something
 */
export async function exportRecords(folder: string, options: ExportOptions): Promise<Manifest> {
  if ((await readdir(folder).catch(() => [])).length > 0)
    throw new Error(`${folder} is not empty; nothing was written.`);
  await takeAnchor(options.url, options.keys, options.at);
  const half = `${folder.replace(/\/+$/, '')}.half`;
  await rm(half, { recursive: true, force: true });
  const manifest = await inOneMoment(options.url, (client) => write(half, client, options));
  await rm(folder, { recursive: true, force: true });
  await rename(half, folder);
  return manifest;
}

async function inOneMoment<T>(url: string, use: (client: pg.Client) => Promise<T>): Promise<T> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  try {
    await client.query('BEGIN ISOLATION LEVEL REPEATABLE READ READ ONLY');
    await client.query(plainTexts);
    return await use(client);
  } finally {
    await client.end();
  }
}

async function write(folder: string, client: pg.Client, options: ExportOptions): Promise<Manifest> {
  const source = new DatabaseSource(client, options.filesFolder);
  const out = new Out(folder);
  const keys = await source.keys();
  const tables = await source.sealedTables();
  await out.lines(exportFiles.links, plainLinks(source));
  await out.lines(exportFiles.heads, source.heads());
  await out.lines(exportFiles.anchors, source.anchors());
  await out.lines(exportFiles.anchoredByChain, source.anchoredByChain());
  await out.lines(exportFiles.anchoredByAnchor, source.anchoredByAnchor());
  await out.lines(exportFiles.keys, keys);
  await out.lines(exportFiles.purges, await source.purges());
  for (const table of tables) await out.lines(sealedFile(table), source.sealedRows(table));
  await out.lines(exportFiles.files, source.files());
  for await (const { hash } of source.files())
    await out.copy(storedFile(hash), join(options.filesFolder, hash.slice(0, 2), hash));
  await out.copy('verify.mjs', options.verifier);
  await out.text('README.txt', readme);
  const key = await options.keys.find(keys.at(-1)?.id ?? '');
  if (!key) throw new Error('The shop has no key to sign with.');
  const manifest: Manifest = {
    format: exportFormat,
    at: options.at.toISOString(),
    shop: await shopName(client),
    key: key.id,
    anchor: await newestAnchor(client),
    sealedTables: tables,
    files: out.files,
  };
  await sign(folder, manifest, key);
  return manifest;
}

async function sign(folder: string, manifest: Manifest, key: ShopKey): Promise<void> {
  const text = canonicalJson(manifest);
  await writeFile(join(folder, exportFiles.manifest), text);
  await writeFile(join(folder, exportFiles.signature), `${signText(key, text)}\n`);
}

/** Links without the columns beside the entry: the text carries them. */
async function* plainLinks(source: DatabaseSource) {
  for await (const { columns: _, ...link } of source.links()) yield link;
}

async function shopName(client: pg.Client): Promise<string> {
  const { rows } = await client.query<{ name: string }>('SELECT name FROM shop_profile');
  return rows[0]?.name ?? '';
}

async function newestAnchor(client: pg.Client): Promise<Manifest['anchor']> {
  const { rows } = await client.query<{ sequence: number; hash: string }>(
    'SELECT sequence, hash FROM anchors ORDER BY sequence DESC LIMIT 1',
  );
  return rows[0] ?? null;
}

/** Writes files into a folder and notes what was written. */
class Out {
  readonly files: ManifestFile[] = [];
  constructor(private readonly folder: string) {}

  async lines(path: string, rows: AsyncIterable<object> | Iterable<object>): Promise<void> {
    await this.stream(path, Readable.from(asLines(rows)));
  }

  async text(path: string, text: string): Promise<void> {
    await this.stream(path, Readable.from([Buffer.from(text)]));
  }

  /** A kept file that is missing stays missing: the verifier names it. */
  async copy(path: string, from: string): Promise<void> {
    const target = await this.place(path);
    const copied = await copyFile(from, target).then(
      () => true,
      () => false,
    );
    if (copied) await this.note(path);
  }

  private async stream(path: string, content: Readable): Promise<void> {
    await pipeline(content, createWriteStream(await this.place(path)));
    await this.note(path);
  }

  private async place(path: string): Promise<string> {
    const target = join(this.folder, path);
    await mkdir(dirname(target), { recursive: true });
    return target;
  }

  private async note(path: string): Promise<void> {
    const hash = createHash('sha256');
    let bytes = 0;
    for await (const piece of createReadStream(join(this.folder, path))) {
      hash.update(piece);
      bytes += piece.length;
    }
    this.files.push({ path, bytes, sha256: hash.digest('hex') });
  }
}

async function* asLines(rows: AsyncIterable<object> | Iterable<object>): AsyncGenerator<string> {
  for await (const row of rows) yield `${JSON.stringify(row)}\n`;
}

const readme = `Records of a repair station, exported to be checked by anyone.

  node verify.mjs            (Node 20 or newer, nothing else)

names every entry, row, anchor or file that was changed, removed, moved or added since it was recorded. A verifier inside
the folder it checks could have been changed too: take verify.mjs from another export, or from the program's source, when
that matters. Ask the shop by another way for the name of its key and pass it with --key; pass an earlier export with
--earlier to see that nothing known then is missing now.

  chains/    every entry of every subject, each holding the SHA-256 of the one before (canonical JSON, RFC 8785)
  anchors/   what stood at the end of every chain at a moment, signed with the shop's Ed25519 key (RFC 8032); the keys
  rows/      stock movements, signatures, measurements and releases, as the anchors saw them
  files/     signed papers and photos, named by their SHA-256
  manifest.json, manifest.signature.txt   what the folder holds, signed
`;
