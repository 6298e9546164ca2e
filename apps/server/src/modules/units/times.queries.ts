import type { Meter } from '@hubwright/contracts/customers/operations';
import type { Input, Reply } from '@hubwright/contracts/operation';
import type { intervalOperations } from '@hubwright/contracts/units/interval-operations';
import type { CountedPiece, PlacedPiece } from '@hubwright/rules/times';
import { Inject, Injectable } from '@nestjs/common';
import { CLOCK, type Clock } from '../../platform/command/clock.ts';
import { ShopZone } from '../../platform/command/shop-zone.ts';
import { found } from '../../platform/command/version.ts';
import { Reads } from '../../platform/database/reads.ts';
import { type TimeFacts, timeFacts } from './time-facts.ts';
import { computedTimes, nothing, restsOn, type Total } from './times-on-record.ts';
import { doubtWords, unknownWords } from './times-words.ts';
import { whereabouts } from './whereabouts.ts';

type Answer = Reply<typeof intervalOperations.itemTimes>;
type Names = ReadonlyMap<string, string>;

@Injectable()
export class TimesQueries {
  constructor(
    @Inject(Reads) private readonly reads: Reads,
    @Inject(CLOCK) private readonly clock: Clock,
    @Inject(ShopZone) private readonly zone: ShopZone,
  ) {}

  /** The times of a unit or part on a day, with all they come from. */
  async asOf(input: Input<typeof intervalOperations.itemTimes>): Promise<Answer> {
    const { models } = this.reads;
    const item = found(await models.serializedItem.findUnique({ where: { id: input.itemId } }), 'This unit or part');
    const asOf = input.asOf ?? (await this.zone.today(this.clock.now()));
    const facts = await timeFacts(models, [item.id]);
    const names = await this.namesIn(facts);
    const where = whereabouts(facts, { item, asOf, names });
    const cyclesSinceNew = cyclesOf(facts, item.id, asOf);
    const times = computedTimes(facts, item.id, { asOf });
    if (typeof times === 'string') {
      const none = { sinceNew: nothing(asOf), sinceOverhaul: nothing(asOf) };
      return { asOf, where, ...none, cyclesSinceNew, pieces: [], unknown: [times], doubts: [] };
    }
    return {
      ...{ asOf, where, cyclesSinceNew },
      sinceNew: total(times.sinceNew),
      sinceOverhaul: total(times.sinceOverhaul),
      pieces: times.pieces.map((piece) => pieceRow(piece, names)),
      unknown: unknownWords(times, asOf),
      doubts: times.doubts.map(doubtWords),
    };
  }

  /** Registrations and names of assemblies, by id. */
  private async namesIn({ intervals, sat }: TimeFacts): Promise<Names> {
    const aircraft = await this.reads.models.aircraft.findMany({
      where: { id: { in: [...intervals.values()].flat().map(({ aircraftId }) => aircraftId) } },
      select: { id: true, registration: true },
    });
    const parents = await this.reads.models.serializedItem.findMany({
      where: { id: { in: [...sat.values()].flat().map(({ parentId }) => parentId) } },
    });
    return new Map([
      ...aircraft.map(({ id, registration }) => [id, registration] as const),
      ...parents.map((one) => [one.id, `${one.partNumber} ${one.serial ?? one.provisionalName ?? ''}`.trim()] as const),
    ]);
  }
}

/** What contradicts itself is told with the hours; of cycles nothing is known then. */
function cyclesOf(facts: TimeFacts, itemId: string, asOf: string): Answer['cyclesSinceNew'] {
  const times = computedTimes(facts, itemId, { asOf, measure: 'cycles' });
  const counted = typeof times === 'string' ? nothing(asOf) : times.sinceNew;
  return {
    ...{ cycles: counted.tenths, atLeast: counted.atLeastTenths, countedThrough: counted.countedThrough },
    restsOn: restsOn(counted, 'cycles'),
  };
}

function total({ tenths, atLeastTenths, start, restartedOn, countedThrough }: Total): Answer['sinceNew'] {
  return { tenths, atLeastTenths, start, restartedOn, countedThrough };
}

function pieceRow(piece: CountedPiece, names: Names): Answer['pieces'][number] {
  const { path } = piece as CountedPiece & PlacedPiece;
  const { intervalId, aircraftId, meterNo, from, fromTenths, to, toTenths, flown, counts } = piece;
  return {
    ...{ intervalId, meterNo, from, fromTenths, to: to ?? null, toTenths: toTenths ?? null },
    aircraft: aircraftId === null ? null : { id: aircraftId, registration: names.get(aircraftId) ?? '' },
    within: path.map(({ parentId: id, position }) => ({ id, position, name: names.get(id) ?? '' })),
    meter: meterNo === 0 ? null : (piece.meter as Meter),
    flownTenths: flown.tenths,
    flownAtLeastTenths: flown.atLeastTenths,
    countsSinceNew: counts.sinceNew,
    countsSinceOverhaul: counts.sinceOverhaul,
  };
}
