import type { CoverInput } from '@hubwright/rules/shortage';
import type { FillQuestion } from './fill.worker.ts';
import type { LineCover } from './line-cover.ts';

/** Every lot with free pieces a demand may draw on: in the order its ways are laid, earliest expiry first within each. */
export function lotsFor(input: CoverInput): (demand: CoverInput['demands'][number]) => string[] {
  const uses = new Map<string, string[]>();
  for (const { part, use } of input.alternates ?? []) {
    const known = uses.get(part);
    if (known) known.push(use);
    else uses.set(part, [use]);
  }
  const lots = new Map<string, CoverInput['onHand']>();
  const never = '9999-12-31';
  const byExpiry = [...input.onHand].sort((a, b) => (a.expires ?? never).localeCompare(b.expires ?? never));
  for (const lot of byExpiry) lots.set(lot.part, [...(lots.get(lot.part) ?? []), lot]);
  return ({ part, minimumExpiry = '' }) =>
    [part, ...(uses.get(part) ?? [])].flatMap((use) =>
      (lots.get(use) ?? []).flatMap(({ id, expires = never }) => (expires >= minimumExpiry ? [id] : [])),
    );
}

/**
 * Open kits as a question to `allocation.fillKits`, drawn from the same question that tells what is short: a line may use what
 * `cover` may use (accepted, papered, of a source its customer takes, theirs or the shop's, with life left at build), only free pieces, and
 * only what lies on the shelf.
 */
export function fillQuestion(
  input: CoverInput,
  covers: readonly LineCover[],
  worthOf: (kitId: string) => number,
): Omit<FillQuestion, 'ms'> {
  const kitOf = new Map(covers.map(({ row }) => [row.lineId, row.kitId]));
  const from = lotsFor(input);
  const kits = new Map<string, { id: string; value: number; lines: FillQuestion['kits'][number]['lines'][number][] }>();
  for (const demand of input.demands) {
    const id = kitOf.get(demand.id) ?? '';
    const kit = kits.get(id) ?? { id, value: worthOf(id), lines: [] };
    kit.lines.push({ id: demand.id, quantity: demand.quantity, from: from(demand) });
    kits.set(id, kit);
  }
  return { kits: [...kits.values()], lots: Object.fromEntries(input.onHand.map(({ id, quantity }) => [id, quantity])) };
}
