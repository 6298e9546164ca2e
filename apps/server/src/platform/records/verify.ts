import { createHash } from 'node:crypto';
import { checkAnchors, checkKeys } from './check-anchors.ts';
import { checkChains, checkLooseEntries } from './check-chains.ts';
import { checkPurges } from './check-purges.ts';
import { checkSignOffs } from './check-sign-offs.ts';
import type { Fault, RecordSource, Report } from './source.ts';

/** Checks everything a source holds; what does not fit is named with its place. Throws only when the source cannot be read. */
export async function verifyRecords(source: RecordSource): Promise<Report> {
  const faults: Fault[] = [];
  const notices: Fault[] = [];
  const fault = (place: string, reason: string) => void faults.push({ place, reason });
  const notice = (place: string, reason: string) => void notices.push({ place, reason });
  const keys = await checkKeys(source, fault, notice);
  const purged = await checkPurges(source, keys, fault);
  const { chains, links } = await checkChains(source, purged.chains, fault);
  await checkLooseEntries(source, fault);
  const anchors = await checkAnchors(source, { keys, purged: purged.rows }, fault);
  const signOffs = await checkSignOffs(source, purged.chains, fault);
  const files = await checkFiles(source, fault);
  return { chains, links, anchors, signOffs, files, keys: [...keys.keys()], faults, notices };
}

async function checkFiles(source: RecordSource, fault: (place: string, reason: string) => void): Promise<number> {
  let count = 0;
  for await (const { hash, size } of source.files()) {
    count += 1;
    const bytes = await source.fileBytes(hash);
    if (!bytes) fault(`file ${hash}`, 'the file is gone');
    else if (!(await isWhole(bytes, hash, size))) fault(`file ${hash}`, 'the file was changed');
  }
  for await (const { place, hash } of source.unkeptFiles())
    fault(place, `the file ${hash} it names is not among the kept ones`);
  return count;
}

async function isWhole(bytes: AsyncIterable<Uint8Array>, hash: string, size: number): Promise<boolean> {
  const now = createHash('sha256');
  let length = 0;
  for await (const piece of bytes) {
    now.update(piece);
    length += piece.byteLength;
  }
  return length === size && now.digest('hex') === hash;
}
