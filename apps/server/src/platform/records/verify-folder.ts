import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { readdir, readFile } from 'node:fs/promises';
import { join, relative, sep } from 'node:path';
import { canonicalJson } from '@hubwright/rules/chain';
import { exportFiles, exportFormat, type Manifest, type ManifestFile } from './folder.ts';
import { FolderSource } from './folder-source.ts';
import { type KeyStatement, signatureHolds } from './shop-key.ts';
import type { Fault, Report } from './source.ts';
import { verifyRecords } from './verify.ts';

/** What the person who checks already knows, from the shop or from an earlier export. */
export interface Trust {
  /** Name of a public key the shop told: it must be among the folder's. */
  readonly key?: string | undefined;
  /** The anchor of an earlier export: it must still be there. */
  readonly anchor?: { readonly sequence: number; readonly hash: string } | undefined;
}

/** Checks an exported folder with nothing but the folder. @throws when there is no manifest to read */
export async function verifyFolder(folder: string, trust: Trust = {}): Promise<Report> {
  const text = await readFile(join(folder, exportFiles.manifest), 'utf8');
  const manifest = JSON.parse(text) as Manifest;
  if (manifest.format !== exportFormat) throw new Error(`This program reads ${exportFormat}, not ${manifest.format}.`);
  const outside = await checkListed(folder, manifest);
  const source = new FolderSource(folder, manifest);
  const inside = await verifyRecords(source).catch((error: Error) => unreadable(error));
  const signed = inside.keys.length === 0 ? [] : await checkSignature(folder, { text, manifest, source });
  const trusted = [...checkKey(inside, trust), ...(await checkAnchor(source, trust).catch(() => []))];
  return { ...inside, faults: [...outside, ...signed, ...inside.faults, ...trusted] };
}

function unreadable(error: Error): Report {
  const faults = [{ place: 'the folder', reason: error.message }];
  return { chains: 0, links: 0, anchors: 0, signOffs: 0, files: 0, keys: [], faults, notices: [] };
}

async function checkListed(folder: string, { files }: Manifest): Promise<Fault[]> {
  const faults: Fault[] = [];
  for (const file of files) {
    const reason = await compare(folder, file);
    if (reason) faults.push({ place: file.path, reason });
  }
  const listed = new Set<string>([...files.map(({ path }) => path), exportFiles.manifest, exportFiles.signature]);
  const found = await readdir(folder, { recursive: true, withFileTypes: true });
  for (const entry of found.filter((one) => one.isFile())) {
    const path = relative(folder, join(entry.parentPath, entry.name)).split(sep).join('/');
    if (!listed.has(path)) faults.push({ place: path, reason: 'the file is not listed in the manifest' });
  }
  return faults;
}

async function compare(folder: string, file: ManifestFile): Promise<string | undefined> {
  const hash = createHash('sha256');
  let bytes = 0;
  try {
    for await (const piece of createReadStream(join(folder, file.path))) {
      hash.update(piece);
      bytes += piece.length;
    }
  } catch {
    return 'the file is missing';
  }
  if (bytes !== file.bytes) return `the file has ${bytes} bytes, not ${file.bytes}`;
  return hash.digest('hex') === file.sha256 ? undefined : 'the file was changed after the export';
}

async function checkSignature(
  folder: string,
  { text, manifest, source }: { text: string; manifest: Manifest; source: FolderSource },
): Promise<Fault[]> {
  const place = exportFiles.manifest;
  const row = (await source.keys()).find(({ id }) => id === manifest.key);
  if (!row) return [{ place, reason: `its key ${manifest.key} is not one of the shop's` }];
  const signature = await readFile(join(folder, exportFiles.signature), 'utf8').catch(() => '');
  const { publicKey } = JSON.parse(row.statement) as KeyStatement;
  const holds = canonicalJson(manifest) === text && signatureHolds(publicKey, text, signature.trim());
  return holds ? [] : [{ place, reason: 'the manifest was changed after it was signed' }];
}

function checkKey({ keys }: Report, { key }: Trust): Fault[] {
  if (!key || keys.includes(key)) return [];
  return [{ place: `shop key ${key}`, reason: 'the key the shop told is not in this folder' }];
}

async function checkAnchor(source: FolderSource, { anchor }: Trust): Promise<Fault[]> {
  if (!anchor) return [];
  for await (const { sequence, hash } of source.anchors())
    if (sequence === anchor.sequence && hash === anchor.hash) return [];
  return [{ place: `anchor ${anchor.sequence}`, reason: 'the anchor of the earlier export is not in this one' }];
}
