import { addDays } from '../dates/index.ts';
import { type Ahead, monthEnds } from './arrival-shares.ts';
import type { ForeseeInput, ForeseenKind, UnitUnseen } from './foresee-input.ts';
import type { Asks } from './unit-asks.ts';
import { wholePieces } from './whole-pieces.ts';

/** What is expected of one part in one month. `quantity` is the expectation, `pieces` what is planned for it. */
export interface Foreseen {
  readonly id: string;
  readonly part: string;
  readonly kind: ForeseenKind;
  readonly sources: string;
  readonly month: string;
  readonly needBy: string;
  readonly quantity: number;
  readonly pieces: number;
}

export interface Foresight {
  readonly rows: Foreseen[];
  /** Units behind the rows of a part, by kind. */
  readonly units: { readonly part: string; readonly kind: ForeseenKind; readonly count: number }[];
}

/** Units that ask for the same, added up: thousands of units are of a few models. */
export interface Group {
  readonly asks: Asks;
  readonly sources: string;
  readonly shares: number[];
  units: number;
}

/** Months from this one; what has passed counts for this one. */
export function monthOf(day: string, { today }: Ahead): number {
  const count = (date: string) => Number(date.slice(0, 4)) * 12 + Number(date.slice(5, 7));
  return Math.max(0, count(day) - count(today));
}

interface Cell {
  quantity: number;
  needBy: string;
}

/** Expectations by part, kind, sources and month. */
export class Plan {
  private readonly cells = new Map<string, Map<string, (Cell | undefined)[]>>();
  private readonly counts = new Map<string, Map<ForeseenKind, number>>();
  private readonly input: ForeseeInput;
  private readonly ends: readonly string[];
  private readonly needed: readonly string[];

  constructor(input: ForeseeInput) {
    this.input = input;
    this.ends = monthEnds(input);
    this.needed = this.ends.map((end) => addDays(middle(end, input.today), input.buildDays));
  }

  addDue({ asks, sources, shares, units }: Group): void {
    for (const [part, quantity] of asks.listed)
      this.addMonths(
        part,
        { kind: 'due', sources },
        shares.map((share) => share * quantity),
      );
    for (const [part, { rate, each }] of asks.found)
      this.addMonths(
        part,
        { kind: 'finding', sources },
        shares.map((share) => share * rate * each),
      );
    for (const part of asks.listed.keys()) this.count(part, 'due', units);
    for (const part of asks.found.keys()) this.count(part, 'finding', units);
  }

  addUnseen({ model, sources, needBy, odds, asked }: UnitUnseen): void {
    const month = monthOf(needBy, this.input);
    if (month >= this.input.months) return;
    const day = needBy < this.input.today ? this.input.today : needBy;
    for (const { model: of, part, rate, each } of this.input.rates) {
      if (of !== model || asked.includes(part)) continue;
      this.add(part, { kind: 'finding', sources, month }, { quantity: rate * each * odds, needBy: day });
      this.count(part, 'finding', 1);
    }
  }

  rows(): Foreseen[] {
    return [...this.cells].flatMap(([part, series]) => {
      const all = [...series].sort(([one], [other]) => (one < other ? -1 : 1));
      const rows = this.ends.flatMap((end, month) =>
        all.flatMap(([key, cells]) => {
          const cell = cells[month];
          const [kind, sources] = split(key);
          const at = end.slice(0, 7);
          return cell && cell.quantity > 0
            ? [{ id: `${part} ${key} ${at}`, part, kind, sources, month: at, ...cell }]
            : [];
        }),
      );
      const pieces = wholePieces(rows.map(({ quantity }) => quantity));
      return rows.map((row, at) => ({ ...row, pieces: pieces[at] ?? 0 }));
    });
  }

  units(): Foresight['units'] {
    return [...this.counts].flatMap(([part, kinds]) => [...kinds].map(([kind, count]) => ({ part, kind, count })));
  }

  private addMonths(part: string, of: { kind: ForeseenKind; sources: string }, quantities: readonly number[]): void {
    quantities.forEach((quantity, month) => {
      if (quantity > 0) this.add(part, { ...of, month }, { quantity, needBy: this.needed[month] ?? this.input.today });
    });
  }

  private add(part: string, of: { kind: ForeseenKind; sources: string; month: number }, more: Cell): void {
    const series = this.cells.get(part) ?? new Map<string, (Cell | undefined)[]>();
    this.cells.set(part, series);
    const key = `${of.kind} ${of.sources}`;
    const cells = series.get(key) ?? [];
    series.set(key, cells);
    const known = cells[of.month];
    cells[of.month] = known
      ? { quantity: known.quantity + more.quantity, needBy: [known.needBy, more.needBy].sort()[0] ?? more.needBy }
      : { ...more };
  }

  private count(part: string, kind: ForeseenKind, units: number): void {
    const kinds = this.counts.get(part) ?? new Map<ForeseenKind, number>();
    this.counts.set(part, kinds.set(kind, (kinds.get(kind) ?? 0) + units));
  }
}

/** Arrivals of a month come about its middle; those of this month not before today. */
function middle(end: string, today: string): string {
  const day = `${end.slice(0, 7)}-15`;
  return day < today ? today : day;
}

function split(key: string): [ForeseenKind, string] {
  const at = key.indexOf(' ');
  return [key.slice(0, at) as ForeseenKind, key.slice(at + 1)];
}
