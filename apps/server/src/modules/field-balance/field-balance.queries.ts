import type { fieldBalanceOperations } from '@hubwright/contracts/field-balance/operations';
import type { FieldBalanceDetail, FieldState } from '@hubwright/contracts/field-balance/shapes';
import type { Input, Reply } from '@hubwright/contracts/operation';
import { Inject, Injectable, StreamableFile } from '@nestjs/common';
import { found } from '../../platform/command/version.ts';
import { fromDbDate } from '../../platform/database/dates.ts';
import type { Prisma } from '../../platform/database/generated/client.ts';
import { Reads } from '../../platform/database/reads.ts';
import { answerOf, surprisesOf } from './answer.ts';
import {
  asRun,
  dataOf,
  type EffectiveRun,
  effectiveRuns,
  setUpOf,
  type WholeBalance,
  wholeBalance,
} from './field-balance.ts';
import { HardwareQueries } from './hardware.queries.ts';
import { openItems } from './judged.ts';
import { printRecord } from './print-record.ts';
import { type BalancedContent, logEntry } from './signed-balance.ts';
import { supervisorOf } from './supervised.ts';
import { standingOf } from './weights.ts';

type People = Awaited<ReturnType<HardwareQueries['people']>>;
type Listed = Input<typeof fieldBalanceOperations.listFieldBalances>;
const rowParts = { customer: true, aircraft: true, unit: { include: { model: true } } } as const;

@Injectable()
export class FieldBalanceQueries {
  constructor(
    @Inject(Reads) private readonly reads: Reads,
    @Inject(HardwareQueries) private readonly stock: HardwareQueries,
  ) {}

  async list({ search, state, limit, after }: Listed): Promise<Reply<typeof fieldBalanceOperations.listFieldBalances>> {
    const rows = await this.reads.models.fieldBalance.findMany({
      where: {
        ...(state === undefined ? {} : { state: state === 'open' ? { notIn: ['released', 'abandoned'] } : state }),
        ...(after ? { number: { lt: after } } : {}),
        ...(search ? { OR: matching(search) } : {}),
      },
      orderBy: { number: 'desc' },
      take: limit + 1,
      include: rowParts,
    });
    const shown = rows.slice(0, limit);
    return { rows: shown.map(headOf), next: rows.length > limit ? (shown.at(-1)?.number ?? null) : null };
  }

  async detail(fieldBalanceId: string): Promise<FieldBalanceDetail> {
    const balance = await this.whole(fieldBalanceId);
    const people = await this.stock.people([
      balance.plannedBy,
      ...balance.signatures.map(({ personId }) => personId),
      ...balance.runs.map(({ recordedBy }) => recordedBy),
    ]);
    const runs = effectiveRuns(balance);
    const standing = standingOf(balance);
    const modelId = balance.unit.modelId ?? '';
    const [spec] = balance.specId ? await this.stock.specs([balance.specId]) : [await this.stock.newestOf(modelId)];
    const setUp = setUpOf(balance);
    const said =
      balance.spec && setUp && runs.some(({ kind }) => kind !== 'baseline')
        ? answerOf({ data: dataOf(balance.spec), sheet: setUp.sheet }, runs, {
            ...{ standing, pieces: await this.stock.pieces(balance.customer.acceptedSources) },
          })
        : { answer: null, unanswered: null };
    return {
      ...headOf(balance),
      ...{ plannedBy: people(balance.plannedBy), plannedAt: balance.plannedAt.toISOString() },
      ...{ abandoned: balance.abandoned, modelId, bladeCount: balance.unit.model?.bladeCount ?? 0 },
      ...{ spec: spec ?? null, standing, ...said, open: openItems(balance) },
      ...{ runs: runsOf(balance, runs, people), purged: await this.isPurged(balance) },
      ...signaturesOf(balance, people),
    };
  }

  async pdf(fieldBalanceId: string): Promise<StreamableFile> {
    const balance = await this.whole(fieldBalanceId);
    const of = (kind: string) => balance.signatures.find((one) => one.kind === kind);
    const released = found(
      balance.state === 'released' ? of('released') : undefined,
      'The record of a released balance',
    );
    const balanced = found(of('balanced'), 'The signed balance');
    const shop = found(await this.reads.models.shopProfile.findUnique({ where: { id: 1 } }), 'The shop profile');
    const beside = balance.signatures.filter(({ countersignsId }) => countersignsId === balanced.id);
    const signatures = [balanced, ...beside, released];
    const people = await this.stock.people(signatures.map(({ personId }) => personId));
    const bytes = await printRecord(
      {
        content: balanced.content as unknown as BalancedContent,
        logEntry: (released.content as { logEntry: string }).logEntry,
        customer: balance.customer.name,
        airport: balance.airport,
        signatures: signatures.map(({ meaning, personId, signedAt, contentHash }) => ({
          ...{ meaning, name: people(personId).displayName, signedAt, contentHash },
        })),
      },
      shop,
    );
    const disposition = `inline; filename="${balance.number}.pdf"`;
    return new StreamableFile(bytes, { type: 'application/pdf', disposition });
  }

  private async isPurged({ id, state }: WholeBalance): Promise<boolean> {
    if (!['released', 'abandoned'].includes(state)) return false;
    return (await this.reads.models.recordLink.count({ where: { subjectKind: 'field-balance', subjectId: id } })) === 0;
  }

  private async whole(id: string): Promise<WholeBalance> {
    const balance = await this.reads.models.fieldBalance.findUnique({ where: { id }, include: wholeBalance });
    return found(balance, 'This balance') as WholeBalance;
  }
}

function matching(search: string): Prisma.FieldBalanceWhereInput[] {
  const contains = { contains: search, mode: 'insensitive' as const };
  return [
    { number: contains },
    { aircraft: { registration: contains } },
    { unit: { serial: contains } },
    { customer: { name: contains } },
    { airport: contains },
  ];
}

type Row = Prisma.FieldBalanceGetPayload<{ include: typeof rowParts }>;

function headOf({ customer, aircraft, unit, ...row }: Row) {
  return {
    ...{ id: row.id, number: row.number, state: row.state as FieldState, version: row.version },
    customer: { id: customer.id, name: customer.name },
    aircraft: {
      ...{ id: aircraft.id, registration: aircraft.registration },
      ...{ airframe: aircraft.airframe, engine: aircraft.engine },
    },
    propeller: { id: unit.id, model: unit.model?.designation ?? '', serial: unit.serial ?? '' },
    ...{ airport: row.airport, plannedOn: fromDbDate(row.plannedOn), reason: row.reason },
  };
}

/** Every run, put right or not; whether it surprises is said of those that count. */
function runsOf(balance: WholeBalance, runs: readonly EffectiveRun[], people: People): FieldBalanceDetail['runs'] {
  const setUp = setUpOf(balance);
  const counted = balance.spec && setUp ? { data: dataOf(balance.spec), sheet: setUp.sheet } : undefined;
  const surprises = counted ? surprisesOf(counted, runs) : [];
  const surprising = new Map(runs.map(({ row }, at) => [row.id, surprises[at] ?? false]));
  const newer = new Map(balance.runs.map(({ id, supersedesId, reason }) => [supersedesId, { id, reason }]));
  return balance.runs.map((row) => {
    const { kind, readings, trial } = asRun(row);
    return {
      ...{ id: row.id, setUpId: row.setUpId, sequence: row.sequence, kind, readings, trial },
      supersededById: newer.get(row.id)?.id ?? null,
      ...{ reason: row.reason, surprising: surprising.get(row.id) ?? false },
      ...{ by: people(row.recordedBy), at: row.recordedAt.toISOString() },
    };
  });
}

/** What the technician remarked, and the entry it makes. */
const said = (content: BalancedContent) => ({ remarks: content.remarks, logEntry: logEntry(content) });

function signaturesOf(
  balance: WholeBalance,
  people: People,
): Pick<FieldBalanceDetail, 'setUp' | 'balanced' | 'released'> {
  const of = (kind: string) => balance.signatures.find((one) => one.kind === kind);
  const by = ({ id, personId, signedAt, meaning, contentHash }: WholeBalance['signatures'][number]) => {
    const supervisorId = supervisorOf(balance, { id });
    return {
      ...{ by: people(personId), at: signedAt.toISOString(), meaning, contentHash },
      supervisor: supervisorId === undefined ? null : people(supervisorId),
    };
  };
  const [setUp, balanced, released] = [setUpOf(balance), of('balanced'), of('released')];
  const isSigned = ['balanced', 'released'].includes(balance.state);
  return {
    setUp: setUp
      ? {
          ...{ id: setUp.signature.id, ...setUp.sheet, ...by(setUp.signature) },
          instrument: (setUp.signature.content as unknown as Pick<BalancedContent, 'instrument'>).instrument,
        }
      : null,
    balanced:
      balanced && isSigned ? { ...said(balanced.content as unknown as BalancedContent), ...by(balanced) } : null,
    released: released ? { logEntry: (released.content as { logEntry: string }).logEntry, ...by(released) } : null,
  };
}
