import type { Input, Reply } from '@hubwright/contracts/operation';
import type { loadOperations } from '@hubwright/contracts/work-orders/load-operations';
import { Inject, Injectable } from '@nestjs/common';
import { CLOCK, type Clock } from '../../platform/command/clock.ts';
import { ShopZone } from '../../platform/command/shop-zone.ts';
import { Reads } from '../../platform/database/reads.ts';
import { equipmentShut } from '../processes/public.ts';
import { bakeClockOf } from './bake-clock.ts';
import { formOf } from './process-form.ts';
import { blockOf } from './step-block.ts';
import { namedTraveler, withTraveler } from './traveler-named.ts';
import { type TurnRow, turnSql } from './turn.ts';

type Loads = Reply<typeof loadOperations.listLoads>;
type Part = Loads['rows'][number]['parts'][number];

const inLoad = {
  where: { out: null },
  orderBy: { id: 'asc' },
  include: { step: { include: withTraveler } },
} as const;

@Injectable()
export class LoadQueries {
  constructor(
    @Inject(Reads) private readonly reads: Reads,
    @Inject(CLOCK) private readonly clock: Clock,
    @Inject(ShopZone) private readonly zone: ShopZone,
  ) {}

  async list({ state, process, limit, after }: Input<typeof loadOperations.listLoads>): Promise<Loads> {
    const rows = await this.reads.models.load.findMany({
      where: {
        ...(state ? { state } : {}),
        ...(process ? { process } : {}),
        ...(after ? { number: { lt: after } } : {}),
      },
      orderBy: { number: 'desc' },
      take: limit + 1,
      include: { parts: inLoad },
    });
    const shown = rows.slice(0, limit);
    const [people, shut, turns] = await Promise.all([
      this.reads.models.person.findMany({
        where: { id: { in: shown.map(({ startedBy }) => startedBy) } },
        select: { id: true, displayName: true, initials: true },
      }),
      this.shut(shown.flatMap(({ state: now, equipmentId }) => (now === 'open' && equipmentId ? [equipmentId] : []))),
      this.turns(shown.filter((load) => load.state === 'open').flatMap(({ parts }) => parts)),
    ]);
    return {
      rows: shown.map((load) => ({
        ...load,
        process: load.process as Loads['rows'][number]['process'],
        state: load.state as Loads['rows'][number]['state'],
        startedBy: people.find(({ id }) => id === load.startedBy) ?? unknownPerson(load.startedBy),
        startedAt: load.startedAt.toISOString(),
        endedAt: load.endedAt?.toISOString() ?? null,
        shut: shut.get(load.equipmentId ?? '') ?? null,
        form: formOf(load.parts.map(({ step }) => step)),
        sheet: (load.parts[0]?.step.sheet ?? null) as Loads['rows'][number]['sheet'],
        parts: load.parts.map((part) => partOf(part, turns)),
      })),
      next: rows.length > limit ? (shown.at(-1)?.number ?? null) : null,
    };
  }

  /** Why nothing is signed in a tank now, by its id. */
  private async shut(ids: readonly string[]): Promise<Map<string, string>> {
    const at = this.clock.now();
    return equipmentShut(this.reads, ids, { at, day: await this.zone.today(at) });
  }

  /** Why steps that lie in a load cannot be signed, and the clocks of their bakes, by step. */
  private async turns(parts: readonly { step: { travelerId: string; id: string } }[]): Promise<Map<string, Turn>> {
    const travelers = [...new Set(parts.map(({ step }) => step.travelerId))];
    const turns = await this.reads.sql<TurnRow>(turnSql, [travelers, null, 5000]);
    const now = this.clock.now();
    return new Map(
      parts.map(({ step }) => {
        const turn = turns.find(({ step_id }) => step_id === step.id);
        const blocked = turn ? (blockOf(turn, now)?.detail ?? null) : 'It is not its turn any more';
        return [step.id, { blocked, bake: bakeClockOf(turn) }];
      }),
    );
  }
}

type Turn = Pick<Part, 'blocked' | 'bake'>;

const unknownPerson = (id: string) => ({ id, displayName: 'Unknown person', initials: '?' });

interface Stored {
  readonly step: {
    readonly id: string;
    readonly title: string;
    readonly traveler: Parameters<typeof namedTraveler>[0] & {
      readonly workOrder: { readonly customer: { name: string } };
    };
  };
}

function partOf({ step: { id, title, traveler } }: Stored, turns: ReadonlyMap<string, Turn>): Part {
  const { customer } = traveler.workOrder;
  return {
    ...namedTraveler(traveler),
    stepId: id,
    customer: customer.name,
    title,
    ...(turns.get(id) ?? { blocked: null, bake: null }),
  };
}
