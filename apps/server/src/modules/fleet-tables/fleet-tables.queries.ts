import { type FleetKind, fleetFields, fleetKinds } from '@hubwright/contracts/imports/fleet-kinds';
import type { fleetTableOperations } from '@hubwright/contracts/imports/fleet-operations';
import type { Input, Reply } from '@hubwright/contracts/operation';
import { Inject, Injectable } from '@nestjs/common';
import { CLOCK, type Clock } from '../../platform/command/clock.ts';
import { ShopZone } from '../../platform/command/shop-zone.ts';
import { found } from '../../platform/command/version.ts';
import { Reads } from '../../platform/database/reads.ts';
import { previewTable, stagedTable, templateText } from '../imports/public.ts';
import { planTable } from './plan.ts';

type Preview = typeof fleetTableOperations.previewFleetTable;
type Done = typeof fleetTableOperations.listFleetTables;

/** What a customer's tables would do, and what they did. */
@Injectable()
export class FleetTableQueries {
  constructor(
    @Inject(Reads) private readonly reads: Reads,
    @Inject(CLOCK) private readonly clock: Clock,
    @Inject(ShopZone) private readonly zone: ShopZone,
  ) {}

  template(kind: FleetKind): string {
    return templateText(fleetFields[kind]);
  }

  async preview(input: Input<Preview>): Promise<Reply<Preview>> {
    const { models } = this.reads;
    const table = await stagedTable(models, input.importId, fleetKinds);
    const today = await this.zone.today(this.clock.now());
    const shown = await previewTable(models, input, {
      ...{ table, fields: fleetFields[table.kind] },
      plan: (mapping) =>
        planTable(models, table, { ask: (text, given) => this.reads.sql(text, given), mapping, today }),
    });
    return { ...shown, kind: table.kind, customerId: table.customerId ?? '' };
  }

  async list({ customerId, after, limit }: Input<Done>): Promise<Reply<Done>> {
    const { models } = this.reads;
    found(await models.customer.findUnique({ where: { id: customerId }, select: { id: true } }), 'This customer');
    const rows = await models.importedTable.findMany({
      where: { customerId, ...(after && /^[0-9a-f-]{36}$/i.test(after) ? { id: { lt: after } } : {}) },
      orderBy: { id: 'desc' },
      take: limit + 1,
      omit: { rows: true, changes: true, mapping: true },
    });
    const shown = rows.slice(0, limit);
    const people = await models.person.findMany({
      where: { id: { in: [...new Set(shown.map(({ appliedBy }) => appliedBy))] } },
      select: { id: true, displayName: true, initials: true },
    });
    const names = new Map(people.map((one) => [one.id, one]));
    return {
      rows: shown.map(({ id, kind, appliedAt, appliedBy, newRows, changedRows, sameRows }) => ({
        ...{ id, kind: kind as FleetKind, appliedAt: appliedAt.toISOString(), newRows, changedRows, sameRows },
        appliedBy: names.get(appliedBy) ?? { id: appliedBy, displayName: 'Unknown person', initials: '?' },
      })),
      next: rows.length > limit ? (shown.at(-1)?.id ?? null) : null,
    };
  }
}
