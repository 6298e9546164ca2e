import type { FrozenLot, freezerOperations } from '@hubwright/contracts/inventory/freezer-operations';
import type { Reply } from '@hubwright/contracts/operation';
import { Inject, Injectable } from '@nestjs/common';
import { CLOCK, type Clock } from '../../platform/command/clock.ts';
import { ShopZone } from '../../platform/command/shop-zone.ts';
import { fromDbDate } from '../../platform/database/dates.ts';
import { Reads } from '../../platform/database/reads.ts';
import { outTimeAt } from './frozen-lot.ts';

/** More frozen lots than a shop has; keeps the answer bounded. */
const mostLots = 200;
const mostMoves = 20_000;

@Injectable()
export class FrozenLotQueries {
  constructor(
    @Inject(Reads) private readonly reads: Reads,
    @Inject(CLOCK) private readonly clock: Clock,
    @Inject(ShopZone) private readonly zone: ShopZone,
  ) {}

  async list(): Promise<Reply<typeof freezerOperations.listFrozenLots>> {
    const lots = await this.reads.models.lot.findMany({
      where: {
        ...{ state: 'accepted', part: { outTimeHours: { not: null } } },
        balances: { some: { onHand: { gt: 0 }, placeKind: { in: ['bin', 'receiving', 'tray'] } } },
      },
      orderBy: [{ expiresOn: 'asc' }, { code: 'asc' }],
      take: mostLots,
      include: { part: true, balances: true },
    });
    const moves = await this.reads.models.freezerMove.findMany({
      where: { lotId: { in: lots.map(({ id }) => id) } },
      orderBy: [{ at: 'asc' }, { id: 'asc' }],
      take: mostMoves,
    });
    const people = await this.reads.models.person.findMany({
      where: { id: { in: [...new Set(moves.map(({ personId }) => personId))] } },
      select: { id: true, displayName: true },
    });
    const now = this.clock.now();
    const today = await this.zone.today(now);
    const names = new Map(people.map(({ id, displayName }) => [id, displayName]));
    const rows = lots.map((lot) => {
      const own = moves.filter(({ lotId }) => lotId === lot.id);
      const log = own.map(({ at, to, personId }) => ({
        ...{ at: at.toISOString(), to: to as 'out' | 'in', person: names.get(personId) ?? '' },
      }));
      return { ...rowOf(lot, own, { now, today }), log: log.reverse().slice(0, 50) };
    });
    return { rows: rows.sort((a, b) => (a.outSince === null ? 1 : 0) - (b.outSince === null ? 1 : 0)) };
  }
}

interface Stored {
  readonly id: string;
  readonly code: string;
  readonly version: number;
  readonly expiresOn: Date | null;
  readonly part: FrozenLot['part'] & { readonly outTimeHours: number | null };
  readonly balances: readonly { readonly placeKind: string; readonly onHand: number }[];
}

function rowOf(
  { part, balances, ...lot }: Stored,
  moves: readonly { at: Date; to: string }[],
  { now, today }: { now: Date; today: string },
): Omit<FrozenLot, 'log'> {
  const hours = part.outTimeHours ?? 0;
  const { out, since, runsOutAt, isOver } = outTimeAt(moves, { hours, at: now });
  const expiresOn = lot.expiresOn && fromDbDate(lot.expiresOn);
  const instant = (at: number | undefined) => (at === undefined ? null : new Date(at).toISOString());
  const over = isOver ? 'its out-time is used up' : expiresOn && today >= expiresOn ? 'its freezer life is over' : null;
  return {
    ...{ id: lot.id, code: lot.code, version: lot.version, part, expiresOn, over, outTimeHours: hours },
    ...{ outMinutes: Math.ceil(out / 60_000), outSince: instant(since), runsOutAt: instant(runsOutAt) },
    onHand: balances
      .filter(({ placeKind }) => ['bin', 'receiving', 'tray'].includes(placeKind))
      .reduce((sum, { onHand }) => sum + onHand, 0),
  };
}
