import type { KeyRow } from './shop-key.ts';

/** One link of a chain beside the entry it is made of. `body` is null when the entry is gone. */
export interface LinkRow {
  readonly kind: string;
  readonly id: string;
  readonly sequence: number;
  readonly previous: string;
  readonly hash: string;
  readonly body: string | null;
  /** The entry's columns beside its text, where the source has them. */
  readonly columns?: { readonly command: string; readonly person: string; readonly at: string };
}
export interface HeadRow {
  readonly kind: string;
  readonly id: string;
  readonly sequence: number;
  readonly hash: string;
}
/** A chain's end as one anchor saw it; `after` is where the anchor before had seen it. */
export interface AnchoredRow extends HeadRow {
  readonly anchor: number;
  readonly after: number;
}
export interface AnchorRow {
  readonly sequence: number;
  readonly body: string;
  readonly hash: string;
  readonly keyId: string;
  readonly signature: string;
}
/** One row of a table whose rows are only added, as texts by column name, under the anchor that covers its entry. */
export interface SealedRow {
  readonly anchor: number;
  readonly values: Readonly<Record<string, string | null>>;
}
/** `place` says which row names it. */
export interface UnkeptFile {
  readonly place: string;
  readonly hash: string;
}
/** A signature beside what was signed and the record entry that names it. */
export interface SignOffRow {
  readonly id: string;
  readonly content: string;
  readonly contentHash: string;
  /** The entry's text; null when it is gone; left out where anchors alone tie rows to entries, as in a folder. */
  readonly entry?: string | null;
}
/** An entry of a signed command, with the signatures that are still there for it. */
export interface SigningEntry {
  readonly id: string;
  readonly body: string;
  readonly signOffs: ReadonlySet<string>;
}
/** A proof that records were destroyed by the shop's policy. */
export interface PurgeRow {
  readonly id: string;
  readonly body: string;
  readonly keyId: string;
  readonly signature: string;
}
export interface FileRow {
  readonly hash: string;
  readonly size: number;
}

/**
 * Where records are read from for checking: the database or an exported folder. Chains come in the order of kind, id and
 * sequence, compared byte by byte; everything streams, so that memory does not grow with history.
 */
export interface RecordSource {
  links(): AsyncIterable<LinkRow>;
  heads(): AsyncIterable<HeadRow>;
  /** In the order of chains. */
  anchoredByChain(): AsyncIterable<AnchoredRow>;
  /** In the order of anchors, then chains. */
  anchoredByAnchor(): AsyncIterable<AnchoredRow>;
  anchors(): AsyncIterable<AnchorRow>;
  keys(): Promise<KeyRow[]>;
  purges(): Promise<PurgeRow[]>;
  /** Entries that no chain holds. */
  looseEntries(): AsyncIterable<string>;
  sealedTables(): Promise<string[]>;
  /** In the order of anchors, entries, rows. */
  sealedRows(table: string): AsyncIterable<SealedRow>;
  signOffs(): AsyncIterable<SignOffRow>;
  /** Entries whose text may name signatures; one that stands in several chains may come several times. */
  signingEntries(): AsyncIterable<SigningEntry>;
  files(): AsyncIterable<FileRow>;
  /** Files that rows which are only added name, though no row says they are kept. */
  unkeptFiles(): AsyncIterable<UnkeptFile>;
  /** The bytes kept under a hash; undefined when they are not there. */
  fileBytes(hash: string): AsyncIterable<Uint8Array> | undefined | Promise<AsyncIterable<Uint8Array> | undefined>;
}

/** What a check found. A fault means the records cannot be trusted there; a notice is something to know. */
export interface Fault {
  readonly place: string;
  readonly reason: string;
}
export interface Report {
  readonly chains: number;
  readonly links: number;
  readonly anchors: number;
  readonly signOffs: number;
  readonly files: number;
  /** Public keys by name, oldest first: to be compared with what the shop says its keys are. */
  readonly keys: readonly string[];
  readonly faults: readonly Fault[];
  readonly notices: readonly Fault[];
}
