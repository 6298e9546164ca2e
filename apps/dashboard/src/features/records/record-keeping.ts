import type { Reply } from '@hubwright/contracts/operation';
import { recordOperations } from '@hubwright/contracts/records/operations';
import { queryFor } from '../../api/query.ts';

export type Keeping = Reply<typeof recordOperations.recordKeeping>;

export const keepingQuery = queryFor(recordOperations.recordKeeping, {});

/** Sixteen pairs of digits in groups: easier to compare with a printed name. */
export function keyWords(id: string): string {
  return id.match(/.{1,4}/g)?.join(' ') ?? id;
}

export function bytesText(bytes: number): string {
  if (bytes < 1_000_000) return `${Math.max(1, Math.round(bytes / 1_000))} kB`;
  return bytes < 1_000_000_000 ? `${(bytes / 1_000_000).toFixed(1)} MB` : `${(bytes / 1_000_000_000).toFixed(1)} GB`;
}
