import type { directiveOperations } from '@hubwright/contracts/directives/operations';
import type { Input, Reply } from '@hubwright/contracts/operation';
import { firstDue } from '@hubwright/rules/directives';
import { Inject, Injectable } from '@nestjs/common';
import { CLOCK, type Clock } from '../../platform/command/clock.ts';
import { ShopZone } from '../../platform/command/shop-zone.ts';
import { fromDbDate, fromDbDateOrNull } from '../../platform/database/dates.ts';
import type { Prisma } from '../../platform/database/generated/client.ts';
import { Reads } from '../../platform/database/reads.ts';
import { nameOf } from './rule-shapes.ts';
import { type Standing, standingsOf, type UnitStandings } from './standings.ts';
import { standingsOnVisit } from './visit.ts';

type ListReply = Reply<typeof directiveOperations.listDirectives>;
type StandingsReply = Reply<typeof directiveOperations.unitDirectives>;

const caution =
  'This list shows what is on record. Whether every directive that concerns the unit is on record is for the shop to check with whoever issues them; where one and a maker’s document differ, the directive holds.';

const listed = {
  lines: { orderBy: { sequence: 'asc' }, include: { model: { select: { id: true, designation: true } } } },
  names: { include: { to: { select: { number: true, revision: true } } } },
  namedBy: {
    where: { kind: 'supersedes', from: { withdrawnOn: null } },
    include: { from: { select: { number: true, revision: true } } },
  },
} as const satisfies Prisma.DirectiveInclude;
type Listed = Prisma.DirectiveGetPayload<{ include: typeof listed }>;

@Injectable()
export class DirectiveQueries {
  constructor(
    @Inject(Reads) private readonly reads: Reads,
    @Inject(CLOCK) private readonly clock: Clock,
    @Inject(ShopZone) private readonly zone: ShopZone,
  ) {}

  async list(input: Input<typeof directiveOperations.listDirectives>): Promise<ListReply> {
    const { search, modelId, withdrawn, after, limit } = input;
    const contains = search ? { contains: search, mode: 'insensitive' as const } : undefined;
    const rows = await this.reads.models.directive.findMany({
      where: {
        ...(contains ? { OR: [{ number: contains }, { title: contains }, { issuer: contains }] } : {}),
        ...(modelId ? { lines: { some: { modelId } } } : {}),
        withdrawnOn: withdrawn === 'yes' ? { not: null } : null,
      },
      include: listed,
      orderBy: [{ number: 'asc' }, { id: 'asc' }],
      take: limit + 1,
      ...(after ? { cursor: { id: after }, skip: 1 } : {}),
    });
    const shown = rows.slice(0, limit);
    const people = await this.reads.models.person.findMany({
      where: { id: { in: [...new Set(shown.map(({ issuedBy }) => issuedBy))] } },
      select: { id: true, displayName: true },
    });
    const names = new Map(people.map(({ id, displayName }) => [id, displayName]));
    return {
      rows: shown.map((row) => directiveRow(row, names.get(row.issuedBy) ?? '')),
      next: rows.length > limit ? (shown.at(-1)?.id ?? null) : null,
    };
  }

  async ofUnit({ unitId }: Input<typeof directiveOperations.unitDirectives>): Promise<StandingsReply> {
    const asOf = await this.zone.today(this.clock.now());
    return reply(asOf, await standingsOf(this.reads.models, { unitId, asked: { asOf, visit: null } }));
  }

  async ofWorkOrder({ workOrderId }: Input<typeof directiveOperations.workOrderDirectives>): Promise<StandingsReply> {
    const today = await this.zone.today(this.clock.now());
    return reply(today, await standingsOnVisit(this.reads.models, { workOrderId, today }));
  }
}

function reply(asOf: string, { standings, unit }: UnitStandings): StandingsReply {
  return {
    unitId: unit.unit.itemId,
    asOf,
    standings: standings.map(standingRow),
    firstDue: firstDue(standings),
    caution,
  };
}

type StandingRow = StandingsReply['standings'][number];

function standingRow({ directive, itemId, name, state, reason, until, last }: Standing): StandingRow {
  const { id, number, revision, title, action, terminatingAction, deferDays } = directive;
  return {
    directive: {
      ...{ id, number, revision, title, action, terminatingAction, deferDays },
      kind: directive.kind as StandingRow['directive']['kind'],
      binding: directive.binding as StandingRow['directive']['binding'],
      repeats: directive.repeats as StandingRow['directive']['repeats'],
    },
    ...{ itemId, item: name, state, reason, last },
    untilDate: until?.date ?? null,
    untilHoursTenths: until?.hoursTenths ?? null,
  };
}

function directiveRow(row: Listed, issuedBy: string): ListReply['rows'][number] {
  const { names, namedBy, lines, contentHash: _, entryId: __, ...said } = row;
  const of = (kind: string) => names.filter((one) => one.kind === kind).map(({ to }) => nameOf(to));
  return {
    ...said,
    kind: row.kind as ListReply['rows'][number]['kind'],
    binding: row.binding as ListReply['rows'][number]['binding'],
    repeats: row.repeats as ListReply['rows'][number]['repeats'],
    issuedOn: fromDbDate(row.issuedOn),
    effectiveOn: fromDbDate(row.effectiveOn),
    withdrawnOn: fromDbDateOrNull(row.withdrawnOn),
    lines: lines.map(({ model, partNumber, serialFrom, serialTo }) => ({ model, partNumber, serialFrom, serialTo })),
    ...{ supersedes: of('supersedes'), credits: of('credits'), ends: of('ends') },
    supersededBy: namedBy.map(({ from }) => nameOf(from)),
    ...{ issuedBy, issuedAt: row.issuedAt.toISOString() },
  };
}
