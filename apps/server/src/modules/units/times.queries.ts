import type { Meter } from '@hubwright/contracts/customers/operations';
import type { Input, Reply } from '@hubwright/contracts/operation';
import type { intervalOperations } from '@hubwright/contracts/units/interval-operations';
import { RuleError } from '@hubwright/rules/errors';
import { type CountedPiece, type ExplainedTime, type ItemTimes, itemTimes } from '@hubwright/rules/times';
import { Inject, Injectable } from '@nestjs/common';
import { CLOCK, type Clock } from '../../platform/command/clock.ts';
import { ShopZone } from '../../platform/command/shop-zone.ts';
import { found } from '../../platform/command/version.ts';
import { Reads } from '../../platform/database/reads.ts';
import { type PlacedPiece, type TimeFacts, timeFacts, timesInput } from './time-facts.ts';
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
    const facts = await timeFacts(models, item.id);
    const names = await this.namesIn(facts);
    const where = whereabouts(facts, { item, asOf, names });
    const times = computed(facts, item, asOf);
    if (typeof times === 'string')
      return { asOf, where, sinceNew: none(asOf), sinceOverhaul: none(asOf), pieces: [], unknown: [times], doubts: [] };
    return {
      ...{ asOf, where },
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
      where: { id: { in: intervals.map(({ aircraftId }) => aircraftId) } },
      select: { id: true, registration: true },
    });
    const parents = await this.reads.models.serializedItem.findMany({
      where: { id: { in: sat.map(({ parentId }) => parentId) } },
    });
    return new Map([
      ...aircraft.map(({ id, registration }) => [id, registration] as const),
      ...parents.map((one) => [one.id, `${one.partNumber} ${one.serial ?? one.provisionalName ?? ''}`.trim()] as const),
    ]);
  }
}

function computed(facts: TimeFacts, item: { id: string; kind: string }, asOf: string): ItemTimes | string {
  try {
    return itemTimes(timesInput(facts, item, asOf));
  } catch (error) {
    if (error instanceof RuleError)
      return `What is on record contradicts itself, so nothing is computed: ${error.message}`;
    throw error;
  }
}

function none(asOf: string): Answer['sinceNew'] {
  return { tenths: 'unknown', atLeastTenths: 0, start: null, restartedOn: null, countedThrough: asOf };
}

function total({ tenths, atLeastTenths, start, restartedOn, countedThrough }: ExplainedTime): Answer['sinceNew'] {
  return { tenths, atLeastTenths, start, restartedOn, countedThrough };
}

function pieceRow(piece: CountedPiece, names: Names): Answer['pieces'][number] {
  const { sat } = piece as CountedPiece & PlacedPiece;
  const { intervalId, aircraftId, meterNo, from, fromTenths, to, toTenths, flown, counts } = piece;
  return {
    ...{ intervalId, meterNo, from, fromTenths, to: to ?? null, toTenths: toTenths ?? null },
    aircraft: aircraftId === null ? null : { id: aircraftId, registration: names.get(aircraftId) ?? '' },
    within: sat && { id: sat.parentId, name: names.get(sat.parentId) ?? '', position: sat.position },
    meter: meterNo === 0 ? null : (piece.meter as Meter),
    flownTenths: flown.tenths,
    flownAtLeastTenths: flown.atLeastTenths,
    countsSinceNew: counts.sinceNew,
    countsSinceOverhaul: counts.sinceOverhaul,
  };
}
