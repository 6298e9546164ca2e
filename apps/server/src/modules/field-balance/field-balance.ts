import type {
  FieldBalanceData,
  FieldRun,
  FieldSheet,
  FieldState,
  FieldTrial,
} from '@hubwright/contracts/field-balance/shapes';
import type { Operation } from '@hubwright/contracts/operation';
import { Problem } from '@hubwright/contracts/problems';
import type { Context } from '../../platform/command/command.ts';
import { found, sameVersion } from '../../platform/command/version.ts';
import type { Tx } from '../../platform/database/client.ts';
import type { Prisma } from '../../platform/database/generated/client.ts';

export const wholeBalance = {
  ...{ customer: true, aircraft: true, spec: true },
  unit: { include: { model: true } },
  signatures: { orderBy: { signedAt: 'desc' }, take: 100, include: { instrument: true } },
  runs: { orderBy: { sequence: 'asc' }, take: 500 },
  reviews: { orderBy: { id: 'asc' }, take: 100, include: { instrument: true } },
  weights: { orderBy: { doneAt: 'asc' }, take: 1_000, include: { lot: { include: { part: true } } } },
} as const satisfies Prisma.FieldBalanceInclude;

export type WholeBalance = Prisma.FieldBalanceGetPayload<{ include: typeof wholeBalance }>;
type RunRow = WholeBalance['runs'][number];

/** A balance with all that is on record of it, as the caller saw it. */
export async function theBalance(
  { tx, expectedVersion }: Pick<Context<Operation>, 'tx' | 'expectedVersion'>,
  id: string,
) {
  const balance = found(await tx.fieldBalance.findUnique({ where: { id }, include: wholeBalance }), 'This balance');
  sameVersion(balance.version, expectedVersion);
  return balance;
}

export function refuseUnless(balance: WholeBalance, states: readonly FieldState[]): void {
  if (states.includes(balance.state as FieldState)) return;
  throw new Problem('not-set-up', `${balance.number} is ${balance.state}`, { state: balance.state });
}

export const balanceLock = ({ fieldBalanceId }: { fieldBalanceId: string }) => `field-balance:${fieldBalanceId}`;

/** Writes the new version and answers what every outcome says of the balance itself. */
export async function stepOn(tx: Tx, balance: WholeBalance, data: Prisma.FieldBalanceUncheckedUpdateInput) {
  const version = balance.version + 1;
  await tx.fieldBalance.update({ where: { id: balance.id }, data: { ...data, version } });
  return {
    version,
    subject: { kind: 'field-balance', id: balance.id, before: balance.version, after: version },
  };
}

export const dataOf = (spec: { data: unknown }) => spec.data as FieldBalanceData;

/** The sheet that counts, with what was signed. */
export function setUpOf(balance: WholeBalance) {
  const signature = balance.signatures.find(({ kind }) => kind === 'set-up');
  if (!signature) return undefined;
  const { sheet } = signature.content as unknown as { sheet: Omit<FieldSheet, 'instrumentId'> };
  return { signature, sheet };
}

/** A weight in a place: grams, degrees from the reference blade in the model's direction. */
export interface Placed {
  readonly place: string;
  readonly angle: number;
  readonly mass: number;
}

export interface EffectiveRun {
  readonly row: RunRow;
  readonly kind: FieldRun['kind'];
  readonly readings: FieldRun['readings'];
  readonly trial: FieldTrial | null;
  readonly weights: readonly Placed[];
}

/** Runs under the sheet that counts as they stand: a reading put right takes the place of the wrong one. */
export function effectiveRuns(balance: WholeBalance): EffectiveRun[] {
  const setUp = setUpOf(balance);
  const under = balance.runs.filter(({ setUpId }) => setUpId === setUp?.signature.id);
  const newer = new Map(under.flatMap((row) => (row.supersedesId ? [[row.supersedesId, row] as const] : [])));
  const current = (row: RunRow): RunRow => {
    const next = newer.get(row.id);
    return next ? current(next) : row;
  };
  return under.filter(({ supersedesId }) => supersedesId === null).map((first) => asRun(current(first)));
}

export function asRun(row: RunRow): EffectiveRun {
  return {
    row,
    kind: row.kind as FieldRun['kind'],
    readings: row.readings as FieldRun['readings'],
    trial: row.trial as FieldTrial | null,
    weights: row.weights as unknown as Placed[],
  };
}
