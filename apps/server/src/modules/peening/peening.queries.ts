import type { PeeningSpec } from '@hubwright/contracts/manuals/measures';
import type { Input, Reply } from '@hubwright/contracts/operation';
import type { PeeningLot, PeeningMachine, peeningOperations } from '@hubwright/contracts/peening/operations';
import { Inject, Injectable } from '@nestjs/common';
import { CLOCK, type Clock } from '../../platform/command/clock.ts';
import { ShopZone } from '../../platform/command/shop-zone.ts';
import { Reads } from '../../platform/database/reads.ts';
import { blockOf, namedTraveler, type TurnRow, turnSql, withTraveler } from '../work-orders/public.ts';
import type { Readings } from './lot.ts';
import { newestChecks, standingOf } from './media.ts';
import { lastHours } from './media-hours.ts';
import { peopleNamed } from './people-named.ts';

/** As many strips of a machine as a chart shows. */
const newestStrips = 60;
const parts = { orderBy: { id: 'asc' }, include: { step: { include: withTraveler } } } as const;

@Injectable()
export class PeeningQueries {
  constructor(
    @Inject(Reads) private readonly reads: Reads,
    @Inject(CLOCK) private readonly clock: Clock,
    @Inject(ShopZone) private readonly zone: ShopZone,
  ) {}

  async machines(): Promise<Reply<typeof peeningOperations.listPeeningMachines>> {
    const rows = await this.reads.models.peeningMachine.findMany({
      orderBy: { code: 'asc' },
      take: 50,
      include: {
        media: { where: { takenOutAt: null }, include: { checks: { ...newestChecks, take: 1 } } },
        setups: {
          orderBy: { qualifiedAt: 'desc' },
          take: 40,
          include: { lots: { orderBy: { startedAt: 'desc' }, take: newestStrips } },
        },
      },
    });
    const people = await peopleNamed(
      this.reads,
      rows.flatMap(({ setups }) => setups.map(({ qualifiedBy }) => qualifiedBy)),
    );
    const hours = await lastHours(
      this.reads,
      rows.map(({ id }) => id),
    );
    const at = { zone: await this.zone.zone(), today: await this.zone.today(this.clock.now()) };
    return {
      rows: rows.map((machine) => ({
        ...{ id: machine.id, code: machine.code, title: machine.title },
        ...{ inService: machine.inService, version: machine.version },
        media: inMachine(machine.media[0], { ...at, hours: hours.get(machine.id) }),
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
      include: { setup: { include: { machine: true } }, media: true, parts },
    });
    const shown = rows.slice(0, limit);
    const people = await peopleNamed(
      this.reads,
      shown.map(({ startedBy }) => startedBy),
    );
    const before = await this.standingBefore(shown.flatMap((lot) => lot.parts.map(({ step }) => step.travelerId)));
    return {
      rows: shown.map(
        (lot): PeeningLot => ({
          ...{ id: lot.id, number: lot.number, version: lot.version, reasons: lot.reasons, decision: lot.decision },
          mediaLot: lot.media?.code ?? lot.setup.mediaLot,
          signedAt: lot.signedAt?.toISOString() ?? null,
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
            ...{ stepId: step.id, title: step.title, blocked: null, before: before.get(step.travelerId) ?? null },
          })),
        }),
      ),
      next: rows.length > limit ? (shown.at(-1)?.number ?? null) : null,
    };
  }

  /** The first open step of each traveler: where its part is by now. */
  private async standingBefore(travelerIds: readonly string[]): Promise<Map<string, string>> {
    const steps = await this.reads.models.travelerStep.findMany({
      where: { travelerId: { in: [...new Set(travelerIds)] }, state: 'open' },
      orderBy: [{ travelerId: 'asc' }, { sequence: 'asc' }],
      distinct: ['travelerId'],
      select: { travelerId: true, title: true },
    });
    return new Map(steps.map(({ travelerId, title }) => [travelerId, title]));
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
}

type InMachine = Parameters<typeof standingOf>[0] & {
  readonly id: string;
  readonly code: string;
  readonly size: string;
};

function inMachine(media: InMachine | undefined, at: Parameters<typeof standingOf>[1]): PeeningMachine['media'] {
  if (!media) return null;
  const { id, code, size, everyHours } = media;
  const { state, dueOn = null, dueAtHours = null } = standingOf(media, at);
  return { id, code, size, everyHours, state, dueOn, dueAtHours };
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
