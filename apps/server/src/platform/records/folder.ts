/** The files of an exported folder: JSON Lines, one object a line, in the order the checks read them. */
export const exportFiles = {
  manifest: 'manifest.json',
  signature: 'manifest.signature.txt',
  links: 'chains/links.jsonl',
  heads: 'chains/heads.jsonl',
  anchors: 'anchors/anchors.jsonl',
  anchoredByChain: 'anchors/chains-by-subject.jsonl',
  anchoredByAnchor: 'anchors/chains-by-anchor.jsonl',
  keys: 'anchors/keys.jsonl',
  purges: 'anchors/purges.jsonl',
  files: 'files.jsonl',
} as const;

export const exportFormat = 'hubwright-records 1';

export interface ManifestFile {
  readonly path: string;
  readonly bytes: number;
  readonly sha256: string;
}
/** What an exported folder says of itself. Its canonical text is signed with the shop's key. */
export interface Manifest {
  readonly format: string;
  readonly at: string;
  readonly shop: string;
  readonly key: string;
  /** The newest anchor, published with every export: a later export must still hold it. */
  readonly anchor: { readonly sequence: number; readonly hash: string } | null;
  readonly sealedTables: readonly string[];
  readonly files: readonly ManifestFile[];
}

export const sealedFile = (table: string) => `rows/${table}.jsonl`;
export const storedFile = (hash: string) => `files/${hash.slice(0, 2)}/${hash}`;
