import type { Input, Reply } from '@hubwright/contracts/operation';
import type { travelerOperations } from '@hubwright/contracts/work-orders/traveler-operations';
import { Inject, Injectable } from '@nestjs/common';
import type { Actor } from '../../platform/command/actor.ts';
import { CLOCK, type Clock } from '../../platform/command/clock.ts';
import { ShopZone } from '../../platform/command/shop-zone.ts';
import { Reads } from '../../platform/database/reads.ts';
import { usableBy } from '../people/public.ts';
import { kindsShut } from '../processes/public.ts';
import { bakeClockOf } from './bake-clock.ts';
import { type Block, blockOf } from './step-block.ts';
import { type TurnRow, turnSql } from './turn.ts';

type Board = Reply<typeof travelerOperations.benchBoard>;
type BenchStep = Board['mine'][number];

/** Far more than a shop has travelers under work; keeps the answer bounded all the same. */
const mostTurns = 5000;

interface WorkedBy {
  readonly traveler_id: string;
  readonly person_id: string;
  readonly name: string;
}

const workedBySql = `
  SELECT DISTINCT s.traveler_id::text AS traveler_id, o.person_id::text AS person_id, p.display_name AS name
  FROM sign_offs o JOIN traveler_steps s ON s.id = o.step_id JOIN people p ON p.id = o.person_id
  WHERE s.traveler_id = ANY ($1::uuid[]) AND s.level = 'perform' AND s.kind <> 'inspect' ORDER BY 3`;

@Injectable()
export class BenchQueries {
  constructor(
    @Inject(Reads) private readonly reads: Reads,
    @Inject(CLOCK) private readonly clock: Clock,
    @Inject(ShopZone) private readonly zone: ShopZone,
  ) {}

  async board(input: Input<typeof travelerOperations.benchBoard>, actor: Actor): Promise<Board> {
    const [turns, held] = await Promise.all([
      this.turns(input.process ?? null),
      this.authorisations(input.personId ?? actor.personId),
    ]);
    const stops = await this.stops();
    const urgent = [...turns].sort(byUrgency);
    const free = urgent.filter((turn) => !stops(turn));
    const blocked = urgent.flatMap((turn) => {
      const why = stops(turn);
      return why && isTheirs(held, turn) ? [{ ...benchStep(turn), blocked: why }] : [];
    });
    return {
      mine: free
        .filter((turn) => isTheirs(held, turn))
        .slice(0, input.limit)
        .map(benchStep),
      blocked: blocked.slice(0, input.limit),
      byProcess: queues(turns, stops),
    };
  }

  async inspections(
    input: Input<typeof travelerOperations.inspectionQueue>,
    actor: Actor,
  ): Promise<Reply<typeof travelerOperations.inspectionQueue>> {
    const [turns, held] = await Promise.all([this.turns(null), this.authorisations(actor.personId)]);
    const now = this.clock.now();
    const waiting = turns
      .filter((turn) => (turn.level === 'inspect' || turn.kind === 'inspect') && !blockOf(turn, now))
      .sort((a, b) => a.ready_since.getTime() - b.ready_since.getTime())
      .slice(0, input.limit);
    const [workers, shop] = await Promise.all([
      this.reads.sql<WorkedBy>(workedBySql, [waiting.map((turn) => turn.traveler_id)]),
      this.reads.models.shopProfile.findUnique({ where: { id: 1 }, select: { inspectOwnWork: true } }),
    ]);
    return {
      rows: waiting.map((turn) => {
        const by = workers.filter((one) => one.traveler_id === turn.traveler_id);
        const relaxed = shop?.inspectOwnWork.includes(turn.process) ?? false;
        return {
          ...benchStep(turn),
          workBy: by.map(({ name }) => name),
          ownWork: !relaxed && by.some((one) => one.person_id === actor.personId),
          authorised: held.has(`${turn.process} ${turn.level}`),
          waitingHours: Math.max(0, Math.floor((now.getTime() - turn.ready_since.getTime()) / 3_600_000)),
        };
      }),
    };
  }

  /** Why a step cannot begin now; nothing fit to do it in or with is a reason too. Work of an earlier day is judged when it is signed. */
  private async stops(): Promise<(turn: TurnRow) => Block | undefined> {
    const at = this.clock.now();
    const shut = await kindsShut(this.reads, { at, day: await this.zone.today(at) });
    return (turn) => blockOf(turn, at) ?? (turn.equipment_kind ? shut(turn.equipment_kind) : undefined);
  }

  private turns(process: string | null): Promise<TurnRow[]> {
    return this.reads.sql<TurnRow>(turnSql, [null, process, mostTurns]);
  }

  /** What a person may use today, as `process level`. */
  private async authorisations(personId: string): Promise<Set<string>> {
    return usableBy(this.reads.models, personId, await this.zone.today(this.clock.now()));
  }
}

/** Theirs alone, or a trainee's under supervision. */
function isTheirs(held: ReadonlySet<string>, turn: TurnRow): boolean {
  if (held.has(`${turn.process} ${turn.level}`)) return true;
  return turn.level === 'perform' && turn.kind !== 'inspect' && held.has(`${turn.process} trainee`);
}

/** Priority, then the promise, then the longest wait. */
function byUrgency(a: TurnRow, b: TurnRow): number {
  return (
    a.priority - b.priority ||
    (a.promised_on ?? '9999').localeCompare(b.promised_on ?? '9999') ||
    a.ready_since.getTime() - b.ready_since.getTime()
  );
}

function queues(turns: readonly TurnRow[], stops: (turn: TurnRow) => Block | undefined): Board['byProcess'] {
  const byKey = new Map<string, Board['byProcess'][number]>();
  for (const turn of turns) {
    const key = `${turn.process} ${turn.level}`;
    const queue = byKey.get(key) ?? {
      process: turn.process as never,
      level: turn.level as never,
      ready: 0,
      blocked: 0,
      minutes: 0,
    };
    if (stops(turn)) queue.blocked += 1;
    else {
      queue.ready += 1;
      queue.minutes += turn.standard_minutes;
    }
    byKey.set(key, queue);
  }
  return [...byKey.values()].sort((a, b) => b.minutes - a.minutes || a.process.localeCompare(b.process));
}

function benchStep(turn: TurnRow): BenchStep {
  return {
    bake: bakeClockOf(turn),
    stepId: turn.step_id,
    travelerId: turn.traveler_id,
    travelerNumber: turn.traveler_number,
    workOrderId: turn.work_order_id,
    workOrderNumber: turn.work_order_number,
    customer: turn.customer,
    unit: { designation: turn.designation, serial: turn.serial },
    partClass: turn.part_class as BenchStep['partClass'],
    position: turn.position,
    sequence: turn.sequence,
    steps: turn.steps,
    title: turn.title,
    process: turn.process as BenchStep['process'],
    level: turn.level as BenchStep['level'],
    kind: turn.kind as BenchStep['kind'],
    phase: turn.phase as BenchStep['phase'],
    standardMinutes: turn.standard_minutes,
    instrumentKind: turn.instrument_kind as BenchStep['instrumentKind'],
    equipmentKind: turn.equipment_kind as BenchStep['equipmentKind'],
    caution: turn.caution,
    outside: turn.outside,
    batched: turn.batched,
    priority: turn.priority,
    promisedOn: turn.promised_on,
    readySince: turn.ready_since.toISOString(),
  };
}
