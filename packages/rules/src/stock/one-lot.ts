/** What makes two lots one and the same to everybody who may use, recall or pay for a piece of them. */
export type LotIdentity = {
  part: string;
  state: string;
  certificate: string;
  supplierLot: string;
  source: string;
  cureDate: string | null;
  expires: string | null;
  owner: string | null;
  order: string | null;
  unitPrice: string;
  serial: string | null;
  /** Kept frozen: its time out of the freezer is its own. */
  frozen: boolean;
};

const words: [keyof LotIdentity, string][] = [
  ['part', 'the part number'],
  ['state', 'whether they may be used'],
  ['certificate', 'the certificate'],
  ['supplierLot', 'the supplier’s lot'],
  ['source', 'where they come from'],
  ['cureDate', 'the cure date'],
  ['expires', 'the day they expire'],
  ['owner', 'whose they are'],
  ['order', 'the order they came on'],
  ['unitPrice', 'what a piece cost'],
];

/**
 * In what two lots differ, in words; empty when their pieces may go under one label. Serialized pieces and frozen material always
 * differ: each piece has its serial, each lot its own time out of the freezer. Source: common practice, no source.
 *
 * @example inWhatTheyDiffer({ …, certificate: 'C-1' }, { …, certificate: 'C-2' }) // ['the certificate']
 */
export function inWhatTheyDiffer(one: LotIdentity, other: LotIdentity): string[] {
  const differences = words.flatMap(([key, word]) => (one[key] === other[key] ? [] : [word]));
  if (one.serial !== null || other.serial !== null) differences.push('the serial');
  if (one.frozen || other.frozen) differences.push('the time out of the freezer');
  return differences;
}
