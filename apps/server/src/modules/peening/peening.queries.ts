import type { PeeningSpec } from '@hubwright/contracts/manuals/measures';
import type { Input, Reply } from '@hubwright/contracts/operation';
import type { PeeningLot, PeeningMachine, peeningOperations } from '@hubwright/contracts/peening/operations';
import { Inject, Injectable } from '@nestjs/common';
import { CLOCK, type Clock } from '../../platform/command/clock.ts';
import { Reads } from '../../platform/database/reads.ts';
import { blockOf, namedTraveler, type TurnRow, turnSql, withTraveler } from '../work-orders/public.ts';
import type { Readings } from './lot.ts';

/** As many strips of a machine as a chart shows. */
const newestStrips = 60;
const parts = { orderBy: { id: 'asc' }, include: { step: { include: withTraveler } } } as const;

@Injectable()
export class PeeningQueries {
  constructor(
    @Inject(Reads) private readonly reads: Reads,
    @Inject(CLOCK) private readonly clock: Clock,
  ) {}

  async machines(): Promise<Reply<typeof peeningOperations.listPeeningMachines>> {
    const rows = await this.reads.models.peeningMachine.findMany({
      orderBy: { code: 'asc' },
      take: 50,
      include: {
        setups: {
          orderBy: { qualifiedAt: 'desc' },
          take: 40,
          include: { lots: { orderBy: { startedAt: 'desc' }, take: newestStrips } },
        },
      },
    });
    const people = await this.people(rows.flatMap(({ setups }) => setups.map(({ qualifiedBy }) => qualifiedBy)));
    return {
      rows: rows.map((machine) => ({
        ...{ id: machine.id, code: machine.code, title: machine.title },
        ...{ inService: machine.inService, version: machine.version },
        setups: machine.setups.map((setup, index) => ({
          ...{ id: setup.id, program: setup.program, mediaSize: setup.mediaSize, mediaLot: setup.mediaLot },
          parameters: setup.parameters as PeeningMachine['setups'][number]['parameters'],
          areas: setup.areas as unknown as PeeningMachine['setups'][number]['areas'],
          qualifiedBy: people(setup.qualifiedBy),
          qualifiedAt: setup.qualifiedAt.toISOString(),
          isCurrent: machine.setups.findIndex(({ program }) => program === setup.program) === index,
          failedLot: setup.lots.find(({ state }) => state === 'held' || state === 'redone')?.number ?? null,
        })),
        history: historyOf(machine.setups.flatMap(({ lots }) => lots)),
      })),
    };
  }

  async lots({ show, limit, after }: Input<typeof peeningOperations.listPeeningLots>) {
    const rows = await this.reads.models.peeningLot.findMany({
      where: {
        ...(show === 'under-way' ? { state: { in: ['open', 'peened', 'held'] } } : {}),
        ...(after ? { number: { lt: after } } : {}),
      },
      orderBy: { number: 'desc' },
      take: limit + 1,
      include: { setup: { include: { machine: true } }, parts },
    });
    const shown = rows.slice(0, limit);
    const people = await this.people(shown.map(({ startedBy }) => startedBy));
    return {
      rows: shown.map(
        (lot): PeeningLot => ({
          ...{ id: lot.id, number: lot.number, version: lot.version, reasons: lot.reasons, decision: lot.decision },
          ...{ state: lot.state as PeeningLot['state'], program: lot.setup.program },
          machine: { id: lot.setup.machineId, code: lot.setup.machine.code, title: lot.setup.machine.title },
          spec: lot.areas as unknown as PeeningSpec,
          opening: lot.opening as PeeningLot['opening'],
          closing: lot.closing as PeeningLot['closing'],
          coverage: lot.coverage as PeeningLot['coverage'],
          startedBy: people(lot.startedBy),
          startedAt: lot.startedAt.toISOString(),
          parts: lot.parts.map(({ step }) => ({
            ...namedTraveler(step.traveler),
            ...{ stepId: step.id, title: step.title, blocked: null },
          })),
        }),
      ),
      next: rows.length > limit ? (shown.at(-1)?.number ?? null) : null,
    };
  }

  async waiting(): Promise<Reply<typeof peeningOperations.waitingForPeening>> {
    const turns = await this.reads.sql<TurnRow>(turnSql, [null, 'shot-peening', 500]);
    const steps = await this.reads.models.travelerStep.findMany({
      where: { id: { in: turns.map(({ step_id }) => step_id) }, peenings: { none: { open: true } } },
      include: withTraveler,
      take: 500,
    });
    const now = this.clock.now();
    return {
      rows: steps
        .filter(({ peening }) => peening !== null)
        .map((step) => {
          const turn = turns.find(({ step_id }) => step_id === step.id);
          return {
            ...namedTraveler(step.traveler),
            ...{ stepId: step.id, title: step.title, spec: step.peening as unknown as PeeningSpec },
            blocked: turn ? (blockOf(turn, now)?.detail ?? null) : null,
          };
        })
        .sort((a, b) => a.travelerNumber.localeCompare(b.travelerNumber)),
    };
  }

  private async people(ids: readonly string[]) {
    const rows = await this.reads.models.person.findMany({
      where: { id: { in: [...new Set(ids)] } },
      select: { id: true, displayName: true, initials: true },
    });
    return (id: string) => rows.find((one) => one.id === id) ?? { id, displayName: 'Unknown person', initials: '?' };
  }
}

function historyOf(
  lots: readonly { number: string; startedAt: Date; opening: unknown; closing: unknown }[],
): PeeningMachine['history'] {
  return [...lots]
    .sort((a, b) => a.startedAt.getTime() - b.startedAt.getTime())
    .flatMap(({ number, opening, closing }) =>
      (['opening', 'closing'] as const).flatMap((when) =>
        (((when === 'opening' ? opening : closing) as Readings | null) ?? []).map(({ area, arcHeight }) => ({
          ...{ area, lot: number, when, arcHeight },
        })),
      ),
    )
    .slice(-8 * newestStrips);
}
