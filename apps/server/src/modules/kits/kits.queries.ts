import type { kitsOperations } from '@hubwright/contracts/kits/operations';
import type { Input, Reply } from '@hubwright/contracts/operation';
import { Inject, Injectable } from '@nestjs/common';
import { found } from '../../platform/command/version.ts';
import { Reads } from '../../platform/database/reads.ts';
import { askThrough } from './ask.ts';
import { boardRow } from './board-row.ts';
import type { ForeseenCover } from './foreseen-cover.ts';
import { type Held, heldAt } from './held.ts';
import { KitCover } from './kit-cover.ts';
import { type KitRow, kitSql, kitsSql, promisesSql } from './kits.sql.ts';
import type { LineCover } from './line-cover.ts';
import { type SupplierRow, shortageRows, supplierSql } from './shortage-rows.ts';
import { lotsOf, surplusOf } from './surplus.ts';
import { type WaitingLine, waitingForView, waitingInWords } from './waiting-lines.ts';

@Injectable()
export class KitsQueries {
  constructor(
    @Inject(Reads) private readonly reads: Reads,
    @Inject(KitCover) private readonly cover: KitCover,
  ) {}

  /** By need date; what each kit has is worked out over all open kits, since they compete. */
  async kitBoard(input: Input<typeof kitsOperations.kitBoard>) {
    const [afterDay, afterCode] = input.after?.split('~') ?? [];
    const [kits, covers] = await Promise.all([
      this.reads.sql<KitRow>(kitsSql, [
        input.state,
        input.search ? `%${input.search}%` : null,
        afterDay ?? null,
        afterCode ?? null,
        input.limit + 1,
      ]),
      input.state === 'open' ? this.cover.kept() : undefined,
    ]);
    const shown = kits.slice(0, input.limit);
    const last = shown.at(-1);
    return {
      rows: shown.map((kit) => boardRow(kit, covers?.ofKit(kit.id) ?? [])),
      next: kits.length > input.limit && last ? `${last.needBy}~${last.code}` : null,
    };
  }

  async kitDetail({ kitId }: Input<typeof kitsOperations.kitDetail>) {
    const kit = found((await this.reads.sql<KitRow>(kitSql, [kitId]))[0], 'This kit');
    const ask = askThrough(this.reads);
    const isOpen = kit.state === 'open';
    const [lines, tray, rack, unit, promises, waiting] = await Promise.all([
      isOpen ? this.cover.kept().then((all) => all.ofKit(kitId)) : this.cover.ofClosedKit(kitId),
      heldAt(ask, { kind: 'tray', ref: kit.id }),
      heldAt(ask, { kind: 'rack', ref: kit.workOrder.id }),
      heldAt(ask, { kind: 'unit', ref: kit.workOrder.id }),
      this.reads.sql<Promised>(promisesSql, [kitId]),
      isOpen ? waitingForView(this.reads.models, kit.workOrder.id) : [],
    ]);
    const mine = new Set<string | null>(lines.map(({ row }) => row.lineId));
    return {
      id: kit.id,
      code: kit.code,
      workOrder: kit.workOrder,
      state: kit.state,
      needBy: kit.needBy,
      acceptedSources: kit.acceptedSources,
      version: kit.version,
      lines: lines.map((line) => detailLine(line, promises)),
      tray: tray.map(placedLot),
      rack: rack.filter(({ lineId }) => mine.has(lineId)).map(placedLot),
      openItems: isOpen ? openItemsOf(lines, { tray, rack, unit }, waiting) : [],
      canComplete: waiting.some(({ why }) => why === 'not-in-kit'),
    };
  }

  /** Parts that stop a build, first day to order first. */
  async shortages(input: Input<typeof kitsOperations.shortages>) {
    const state = await this.cover.kept();
    const covers = state.all().filter(({ short, late }) => short > 0 || late > 0);
    const named = new Set(covers.map(({ row }) => row.part.id));
    const alone = input.of === 'all' ? state.foreseen().filter((one) => !named.has(one.part.id) && isShort(one)) : [];
    const wanted = [...named, ...alone.map(({ part }) => part.id)];
    const parts = await this.reads.sql<SupplierRow>(supplierSql, [wanted]);
    const rows = shortageRows(covers, parts, { of: (partId) => state.foreseenOf(partId), alone }).filter(
      ({ part, supplier }) =>
        (!input.search || `${part.number} ${part.description}`.toLowerCase().includes(input.search.toLowerCase())) &&
        (!input.supplierId || supplier?.id === input.supplierId),
    );
    const start = input.after ? rows.findIndex(({ part }) => part.id === input.after) + 1 : 0;
    const shown = rows.slice(start, start + input.limit);
    return { rows: shown, next: start + input.limit < rows.length ? (shown.at(-1)?.part.id ?? null) : null };
  }
}

function isShort({ months }: ForeseenCover): boolean {
  return months.some(({ short }) => short > 0);
}

type OpenItem = Reply<typeof kitsOperations.kitDetail>['openItems'][number];

/** List lines that are not in the kit, and pieces of it beyond what its lines ask for. */
function openItemsOf(
  lines: readonly LineCover[],
  held: Parameters<typeof lotsOf>[1],
  waiting: readonly WaitingLine[],
): OpenItem[] {
  const surplus = lines.flatMap(({ row }) => surplusOf(row, row, lotsOf(row.lineId, held)));
  return [
    ...waiting.map((line) => ({ place: 'list' as const, what: waitingInWords(line) })),
    ...surplus.map(({ place, what }) => ({ place, what: `${what}.` })),
  ];
}

interface Promised {
  id: string;
  lineId: string;
  lotId: string;
  lotCode: string;
  quantity: number;
  bin: string;
  expiresOn: string | null;
  frozen: { by: string; at: string; reason: string } | null;
}

function detailLine({ row, ...cover }: LineCover, promises: readonly Promised[]) {
  const { lineId, sequence, part, position, quantity, minimum, source, findingId, shopPays, askedLaterAt } = row;
  const { inRack, inTray, installed } = row;
  const { standing, toPull, have, onOrder, short, pegs, coveredOn, orderBy, sentence } = cover;
  const reservations = promises
    .filter((each) => each.lineId === lineId)
    .map(({ lineId: _, frozen, ...reservation }) => ({
      ...reservation,
      frozen: frozen && { ...frozen, at: new Date(frozen.at).toISOString() },
    }));
  return {
    ...{ id: lineId, sequence, part, position, quantity, minimum, source, findingId, shopPays },
    ...{ inRack, inTray, installed, askedLaterAt },
    ...{ standing, toPull, have, onOrder, short, pegs, coveredOn, orderBy, sentence, reservations },
  };
}

export function placedLot(held: Held) {
  const { lotId, lotCode, lotVersion, part, position, lineId, quantity, state, sourceClass, expiresOn } = held;
  return { lotId, lotCode, lotVersion, part, position, lineId, quantity, state, sourceClass, expiresOn };
}
