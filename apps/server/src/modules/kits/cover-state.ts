import type { Alternate } from '@hubwright/rules/shortage';
import type { Supply } from './cover-rows.ts';
import type { ForeseenCover } from './foreseen-cover.ts';
import type { LineCover } from './line-cover.ts';
import type { OddsBasis } from './odds.ts';

/** What the answer was worked out from, beside the rows themselves. */
export type Basis = OddsBasis;

/**
 * What covers every line of every open kit, kept between questions. Only the parts that a change touched are worked out again and
 * take the place of what was known of them.
 */
export class CoverState {
  private readonly byPart = new Map<string, LineCover[]>();
  private readonly foreseenByPart = new Map<string, ForeseenCover>();
  private readonly byKit = new Map<string, LineCover[]>();
  private ordered: LineCover[] | undefined;
  /** Counts up whenever something of it is worked out anew. */
  revision = 0;
  private readonly stock = new Map<string, Supply['stock']>();
  private readonly orders = new Map<string, Supply['orders']>();
  private alternates: Supply['alternates'] = [];

  constructor(
    readonly basis: Basis,
    private links: readonly Alternate[],
  ) {}

  /** All lines by need date, kit and sequence. */
  all(): readonly LineCover[] {
    this.ordered ??= [...this.byKit.values()]
      .filter((lines) => lines.length > 0)
      .sort((a, b) => keyOf(a).localeCompare(keyOf(b)))
      .flat();
    return this.ordered;
  }

  ofKit(kitId: string): readonly LineCover[] {
    return this.byKit.get(kitId) ?? [];
  }

  ofPart(partId: string): readonly LineCover[] {
    return this.byPart.get(partId) ?? [];
  }

  parts(): string[] {
    return [...this.byPart.keys()];
  }

  /** What is foreseen of a part for units that are not in work yet, and what of it is covered. */
  foreseenOf(partId: string): ForeseenCover | undefined {
    return this.foreseenByPart.get(partId);
  }

  /** The same of every part, by part number. */
  foreseen(): ForeseenCover[] {
    return [...this.foreseenByPart.values()].sort((a, b) => (a.part.number < b.part.number ? -1 : 1));
  }

  /** Who may meet whom. */
  get linked(): readonly Alternate[] {
    return this.links;
  }

  /** Parts of lines that belong to these as far as was known: what a kit asked for before it was closed is free again. */
  partsOf(of: { kits: readonly string[]; workOrders: readonly string[]; customers: readonly string[] }): string[] {
    const [kits, workOrders, customers] = [new Set(of.kits), new Set(of.workOrders), new Set(of.customers)];
    const found = new Set<string>();
    for (const lines of this.byKit.values()) {
      const row = lines[0]?.row;
      if (row && (kits.has(row.kitId) || workOrders.has(row.workOrderId) || customers.has(row.customerId)))
        for (const line of lines) found.add(line.row.part.id);
    }
    return [...found];
  }

  /** Puts what is true of these parts now in place of what was known. */
  replace(
    parts: ReadonlySet<string>,
    covers: readonly LineCover[],
    known: { supply: Supply; links: readonly Alternate[]; foreseen: readonly ForeseenCover[] },
  ): void {
    const kits = new Set<string>();
    for (const part of parts) {
      for (const { row } of this.byPart.get(part) ?? []) kits.add(row.kitId);
      for (const map of [this.byPart, this.stock, this.orders, this.foreseenByPart]) map.delete(part);
    }
    for (const kit of kits)
      this.byKit.set(
        kit,
        this.ofKit(kit).filter(({ row }) => !parts.has(row.part.id)),
      );
    for (const cover of covers) {
      push(this.byPart, cover.row.part.id, cover);
      push(this.byKit, cover.row.kitId, cover);
      kits.add(cover.row.kitId);
    }
    for (const kit of kits) this.settle(kit);
    for (const lot of known.supply.stock) push(this.stock, lot.partId, lot);
    for (const order of known.supply.orders) push(this.orders, order.partId, order);
    for (const cover of known.foreseen) this.foreseenByPart.set(cover.part.id, cover);
    this.links = known.links;
    this.alternates = [...this.alternates.filter(({ part }) => !parts.has(part)), ...known.supply.alternates];
    this.ordered = undefined;
    this.revision += 1;
  }

  /** Supply as it was last read: of all parts, or of these. */
  supply(parts?: ReadonlySet<string>): Supply {
    const of = <T>(map: ReadonlyMap<string, T[]>) =>
      parts ? [...parts].flatMap((part) => map.get(part) ?? []) : [...map.values()].flat();
    const alternates = parts ? this.alternates.filter(({ part }) => parts.has(part)) : this.alternates;
    return { stock: of(this.stock), orders: of(this.orders), alternates };
  }

  private settle(kit: string): void {
    const lines = this.byKit.get(kit) ?? [];
    if (lines.length === 0) this.byKit.delete(kit);
    else lines.sort((a, b) => a.row.sequence - b.row.sequence);
  }
}

function keyOf([first]: readonly LineCover[]): string {
  return `${first?.row.needBy} ${first?.row.kitCode}`;
}

function push<T>(map: Map<string, T[]>, key: string, value: T): void {
  const known = map.get(key);
  if (known) known.push(value);
  else map.set(key, [value]);
}
