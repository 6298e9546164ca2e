import { allocationOperations } from '@hubwright/contracts/kits/allocation-operations';
import { Problem } from '@hubwright/contracts/problems';
import { misfit } from '@hubwright/rules/stock';
import { type Context, defineCommand } from '../../platform/command/command.ts';
import type { Tx } from '../../platform/database/client.ts';
import { fromDbDate } from '../../platform/database/dates.ts';
import { type StockLot, stockOfParts } from '../inventory/public.ts';
import { askIn } from './ask.ts';
import { misfitWords, needOf } from './fitting.ts';
import type { Kit, Line } from './kit.ts';
import { figuresOf, toPull } from './line-figures.ts';
import { kitsWithLines } from './many-kits.ts';
import { promiseMany } from './promise-many.ts';
import { shelfLocks } from './reserve.ts';
import { buildDay, standIns } from './stand-ins.ts';

const operation = allocationOperations.acceptFill;
type Accepting = Context<typeof operation>;
type Proposed = Accepting['input']['kits'][number];

/** The proposal becomes promises, whole and as it was shown; what moved meanwhile is named and nothing is promised. */
export const acceptFill = defineCommand(operation, {
  async locks({ kits }, tx) {
    const ids = kits.map(({ kitId }) => kitId);
    const lines = await tx.kitLine.findMany({ where: { kitId: { in: ids } }, select: { partId: true } });
    return [
      ...ids.map((id) => `kit:${id}`),
      ...(await shelfLocks(tx, [...new Set(lines.map(({ partId }) => partId))])),
    ];
  },
  async execute(context) {
    const { tx, input } = context;
    const kits = await kitsWithLines(
      tx,
      input.kits.map(({ kitId }) => kitId),
    );
    const shelf = await shelfFor(context, [...kits.values()]);
    const taken = new Map<string, number>();
    const moved = input.kits.flatMap((proposed) => {
      const kit = kits.get(proposed.kitId);
      return kit ? whatMoved({ kit, proposed, shelf, taken }) : [];
    });
    if (moved.length > 0) throw new Problem('proposal-moved', `${moved.slice(0, 5).join('; ')}.`, { moved });
    const picks = input.kits.flatMap((each) => each.picks);
    await promiseMany(context, picks);
    await tx.kit.updateMany({ where: { id: { in: [...kits.keys()] } }, data: { version: { increment: 1 } } });
    const subjects = [...kits.values()].flatMap((kit) => [
      { kind: 'kit', id: kit.id, before: kit.version, after: kit.version + 1 },
      { kind: 'work-order', id: kit.workOrderId },
    ]);
    const codes = [...kits.values()].map(({ code }) => code);
    return {
      reply: { kits: kits.size, lines: new Set(picks.map(({ lineId }) => lineId)).size },
      subjects: subjects as [(typeof subjects)[number], ...typeof subjects],
      facts: { kits: codes, promised: picks.length },
    };
  },
});

interface ShelfOfAll {
  readonly lots: ReadonlyMap<string, StockLot>;
  readonly needs: (kit: Kit, line: Line) => number;
  readonly usable: (kit: Kit, line: Line) => string[];
  readonly today: string;
}

/** The shelf and what every line still needs, read once for all kits. */
async function shelfFor({ tx, today }: { tx: Tx; today: string }, kits: readonly Kit[]): Promise<ShelfOfAll> {
  const partIds = [...new Set(kits.flatMap(({ lines }) => lines.map(({ partId }) => partId)))];
  const known = await standIns(askIn(tx), partIds);
  const lots = await stockOfParts(tx, [...new Set(partIds.flatMap((id) => known.parts(id)))]);
  const figures = await figuresOf(
    askIn(tx),
    kits.map(({ id }) => id),
  );
  return {
    lots: new Map(lots.map((lot) => [lot.id, lot])),
    needs: (kit, line) => {
      const isTornDown = kit.lines.some(({ id }) => figures(id).cameOn > 0);
      return Math.max(0, toPull(line, figures(line.id), isTornDown) - figures(line.id).reserved);
    },
    usable: (kit, line) => known.parts(line.partId, buildDay(fromDbDate(kit.needBy), today)),
    today,
  };
}

function whatMoved(of: { kit: Kit; proposed: Proposed; shelf: ShelfOfAll; taken: Map<string, number> }): string[] {
  const { kit, proposed, shelf, taken } = of;
  if (kit.version !== proposed.version) return [`${kit.code} was changed`];
  const lines = new Map(kit.lines.map((line) => [line.id, line]));
  const given = new Map<string, number>();
  const wrong = proposed.picks.flatMap(({ lineId, lotId, quantity }) => {
    const line = lines.get(lineId);
    if (!line) throw new Problem('part-not-on-kit', `${kit.code} has no such line`, { kit: kit.code });
    given.set(lineId, (given.get(lineId) ?? 0) + quantity);
    taken.set(lotId, (taken.get(lotId) ?? 0) + quantity);
    const lot = shelf.lots.get(lotId);
    if (!lot) return [`a lot of ${line.part.number} for ${kit.code} is no longer in a bin`];
    const reason = misfit(lot.facts, needOf(kit, shelf.usable(kit, line), shelf.today));
    if (reason) return [misfitWords(kit, lot, reason)];
    return lot.facts.free < (taken.get(lotId) ?? 0) ? [`only ${lot.facts.free} of ${lot.code} are free`] : [];
  });
  const unequal = kit.lines.filter((line) => shelf.needs(kit, line) !== (given.get(line.id) ?? 0));
  return [...wrong, ...unequal.map((line) => `${kit.code} needs another quantity of ${line.part.number} now`)];
}
