import type { Input, Reply } from '@hubwright/contracts/operation';
import type { travelerOperations } from '@hubwright/contracts/work-orders/traveler-operations';
import { Inject, Injectable } from '@nestjs/common';
import { CLOCK, type Clock } from '../../platform/command/clock.ts';
import { found } from '../../platform/command/version.ts';
import { Reads } from '../../platform/database/reads.ts';
import { bakeClocks } from './bake-clock.ts';
import { compareForReading } from './compare-work.ts';
import { blockOf } from './step-block.ts';
import { type Signers, stepRow } from './step-row.ts';
import { type TurnRow, turnSql } from './turn.ts';

const steps = {
  orderBy: { sequence: 'asc' },
  include: {
    measures: { orderBy: { sequence: 'asc' } },
    signOffs: { orderBy: { signedAt: 'asc' }, include: { measurements: true } },
  },
} as const;

@Injectable()
export class TravelerQueries {
  constructor(
    @Inject(Reads) private readonly reads: Reads,
    @Inject(CLOCK) private readonly clock: Clock,
  ) {}

  async list({
    workOrderId,
  }: Input<typeof travelerOperations.listTravelers>): Promise<Reply<typeof travelerOperations.listTravelers>> {
    const rows = await this.reads.models.traveler.findMany({
      where: { workOrderId },
      orderBy: { number: 'asc' },
      take: 100,
      include: {
        item: { select: { serial: true, provisionalName: true } },
        steps: { select: { state: true } },
        _count: { select: { findings: true } },
      },
    });
    const turns = await this.turns(rows.map(({ id }) => id));
    const now = this.clock.now();
    return {
      rows: rows.map((row) => {
        const [turn] = turns.filter(({ traveler_id }) => traveler_id === row.id);
        const needed = row.steps.filter(({ state }) => state !== 'not-needed');
        return {
          ...head(row),
          stepsDone: needed.filter(({ state }) => state !== 'open').length,
          steps: needed.length,
          next: turn
            ? {
                stepId: turn.step_id,
                title: turn.title,
                phase: turn.phase as never,
                blocked: blockOf(turn, now) ?? null,
              }
            : null,
          findings: row._count.findings,
        };
      }),
    };
  }

  async detail({
    travelerId,
  }: Input<typeof travelerOperations.traveler>): Promise<Reply<typeof travelerOperations.traveler>> {
    const row = found(
      await this.reads.models.traveler.findUnique({
        where: { id: travelerId },
        include: {
          item: { select: { serial: true, provisionalName: true } },
          workOrder: { include: { customer: true, model: true, unit: true, application: true } },
          steps,
          findings: { orderBy: { number: 'asc' } },
        },
      }),
      'This traveler',
    );
    const { workOrder } = row;
    const [turns, clocks, revision, people] = await Promise.all([
      this.turns([travelerId]),
      bakeClocks(this.reads, travelerId),
      this.revision(row.revisionId),
      this.signers(row.steps.flatMap(({ signOffs }) => signOffs)),
    ]);
    const needed = row.steps.filter(({ state }) => state !== 'not-needed');
    return {
      ...head(row),
      stepsDone: needed.filter(({ state }) => state !== 'open').length,
      workOrder: { ...workOrder, customer: workOrder.customer.name },
      unit: unitOf(workOrder),
      itemId: row.itemId,
      revision,
      createdAt: row.createdAt.toISOString(),
      steps: row.steps.map((step) => stepRow(step, { turns, clocks, now: this.clock.now(), people })),
      findings: row.findings.map((finding) => ({
        ...finding,
        disposition: finding.disposition as 'serviceable' | 'repair' | 'reject' | null,
        raisedAt: finding.raisedAt.toISOString(),
      })),
    };
  }

  async differences({ workOrderId }: Input<typeof travelerOperations.revisionDifferences>) {
    const workOrder = found(
      await this.reads.models.workOrder.findUnique({ where: { id: workOrderId }, include: { revision: true } }),
      'This work order',
    );
    const current = found(
      await this.reads.models.manualRevision.findFirst({
        where: { manualId: workOrder.revision.manualId, state: 'current' },
      }),
      'A current revision of the manual',
    );
    const { differences, reopensBuild } = await compareForReading(this.reads.models, workOrder, {
      ...workOrder,
      revisionId: current.id,
    });
    const { id, revision, state } = workOrder.revision;
    return {
      from: { id, revision, state },
      to: { id: current.id, revision: current.revision },
      superseded: id !== current.id,
      differences,
      reopensBuild,
    };
  }

  private turns(travelerIds: readonly string[]): Promise<TurnRow[]> {
    return this.reads.sql<TurnRow>(turnSql, [travelerIds, null, 1000]);
  }

  private async revision(id: string) {
    const row = found(
      await this.reads.models.manualRevision.findUnique({
        where: { id },
        include: { manual: { select: { number: true } } },
      }),
      'The manual revision',
    );
    return { id, manual: row.manual.number, revision: row.revision, state: row.state };
  }

  /** Who signed, under which revision and with which instrument, for all signatures of a traveler at once. */
  private async signers(
    signOffs: readonly { personId: string; instrumentId: string | null; revisionId: string }[],
  ): Promise<Signers> {
    const ids = (values: readonly (string | null)[]) => ({
      in: [...new Set(values.filter((value) => value !== null))],
    });
    const [people, instruments, revisions] = await Promise.all([
      this.reads.models.person.findMany({
        where: { id: ids(signOffs.map((one) => one.personId)) },
        select: { id: true, displayName: true, initials: true },
      }),
      this.reads.models.instrument.findMany({ where: { id: ids(signOffs.map((one) => one.instrumentId)) } }),
      this.reads.models.manualRevision.findMany({
        where: { id: ids(signOffs.map((one) => one.revisionId)) },
        include: { manual: true },
      }),
    ]);
    return {
      people: new Map(people.map((one) => [one.id, one])),
      instruments: new Map(instruments.map((one) => [one.id, one])),
      revisions: new Map(revisions.map((one) => [one.id, `${one.manual.number} rev. ${one.revision}`])),
    };
  }
}

function unitOf({ unitId, model, unit }: { unitId: string; model: { designation: string }; unit: Head['item'] }) {
  return { id: unitId, designation: model.designation, serial: unit.serial ?? unit.provisionalName ?? '' };
}

interface Head {
  id: string;
  number: string;
  title: string;
  partClass: string;
  position: string;
  disposition: string | null;
  version: number;
  item: { serial: string | null; provisionalName: string | null };
}

function head(row: Head) {
  return {
    id: row.id,
    number: row.number,
    title: row.title,
    partClass: row.partClass as never,
    position: row.position,
    serial: row.item.serial ?? row.item.provisionalName ?? '',
    disposition: row.disposition as 'serviceable' | 'repair' | 'reject' | null,
    version: row.version,
  };
}
