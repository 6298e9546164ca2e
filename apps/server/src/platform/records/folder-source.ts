import { createReadStream } from 'node:fs';
import { access } from 'node:fs/promises';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { exportFiles, type Manifest, sealedFile, storedFile } from './folder.ts';
import type { KeyRow } from './shop-key.ts';
import { signatureTableNames, signedText } from './signed-text.ts';
import type {
  AnchoredRow,
  AnchorRow,
  FileRow,
  HeadRow,
  LinkRow,
  PurgeRow,
  RecordSource,
  SealedRow,
  SigningEntry,
  SignOffRow,
  UnkeptFile,
} from './source.ts';

/** The records of an exported folder. A line that is not JSON throws, naming the file. */
export class FolderSource implements RecordSource {
  constructor(
    private readonly folder: string,
    private readonly manifest: Manifest,
  ) {}

  links(): AsyncIterable<LinkRow> {
    return this.lines(exportFiles.links);
  }
  heads(): AsyncIterable<HeadRow> {
    return this.lines(exportFiles.heads);
  }
  anchoredByChain(): AsyncIterable<AnchoredRow> {
    return this.lines(exportFiles.anchoredByChain);
  }
  anchoredByAnchor(): AsyncIterable<AnchoredRow> {
    return this.lines(exportFiles.anchoredByAnchor);
  }
  anchors(): AsyncIterable<AnchorRow> {
    return this.lines(exportFiles.anchors);
  }
  async keys(): Promise<KeyRow[]> {
    const rows: KeyRow[] = [];
    for await (const row of this.lines<KeyRow>(exportFiles.keys)) rows.push(row);
    return rows;
  }
  async purges(): Promise<PurgeRow[]> {
    const rows: PurgeRow[] = [];
    for await (const row of this.lines<PurgeRow>(exportFiles.purges)) rows.push(row);
    return rows;
  }
  async *looseEntries(): AsyncIterable<string> {
    // Entries travel inside the links of their chains: none can be loose here.
  }
  async sealedTables(): Promise<string[]> {
    return [...this.manifest.sealedTables];
  }
  sealedRows(table: string): AsyncIterable<SealedRow> {
    return this.lines(sealedFile(table));
  }
  async *signOffs(): AsyncIterable<SignOffRow> {
    for (const table of signatureTableNames.filter((name) => this.manifest.sealedTables.includes(name)))
      for await (const { values } of this.sealedRows(table))
        yield {
          ...{ id: values.id ?? '', content: signedText(table, values.content ?? '') },
          contentHash: values.content_hash ?? '',
        };
  }
  async *signingEntries(): AsyncIterable<SigningEntry> {
    const signOffs = new Set<string>();
    for await (const { id } of this.signOffs()) signOffs.add(id);
    for await (const { body } of this.links())
      if (body?.includes('"signOffs":[')) yield { id: entryId(body), body, signOffs };
  }

  files(): AsyncIterable<FileRow> {
    return this.lines(exportFiles.files);
  }
  async *unkeptFiles(): AsyncIterable<UnkeptFile> {
    const kept = new Set<string>();
    for await (const { hash } of this.files()) kept.add(hash);
    for (const table of await this.sealedTables())
      for await (const { values } of this.sealedRows(table))
        for (const [column, hash] of Object.entries(values))
          if (column.endsWith('file_hash') && hash !== null && !kept.has(hash))
            yield { place: `table ${table}, row ${values.id}`, hash };
  }

  async fileBytes(hash: string): Promise<AsyncIterable<Uint8Array> | undefined> {
    const path = join(this.folder, storedFile(hash));
    return access(path).then(
      () => createReadStream(path),
      () => undefined,
    );
  }

  private async *lines<Row>(file: string): AsyncGenerator<Row> {
    const lines = createInterface({
      input: createReadStream(join(this.folder, file)),
      crlfDelay: Number.POSITIVE_INFINITY,
    });
    let number = 0;
    for await (const line of lines) {
      number += 1;
      yield parsed<Row>(line, `${file}, line ${number}`);
    }
  }
}

/** A text that is not readable is named where its chain is checked. */
function entryId(body: string): string {
  try {
    return String((JSON.parse(body) as { id?: unknown }).id);
  } catch {
    return 'that is not readable';
  }
}

function parsed<Row>(line: string, place: string): Row {
  try {
    return JSON.parse(line) as Row;
  } catch {
    throw new Error(`${place} is not readable`);
  }
}
