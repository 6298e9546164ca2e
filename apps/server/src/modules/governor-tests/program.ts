import type { ProgramContent } from '@hubwright/contracts/governor-tests/program';
import type { AcceptedPoint, BenchUnit, PointLimit } from '@hubwright/rules/governor';
import { found } from '../../platform/command/version.ts';
import type { Tx } from '../../platform/database/client.ts';

export type Point = ProgramContent['points'][number];

/** What a program asks, as its row keeps it. */
export function contentOf({ program }: { program: { content: unknown } }): ProgramContent {
  return program.content as ProgramContent;
}

/** The newest issue for a revision and application: what is tested by. */
export function currentProgram(
  tx: Pick<Tx, 'governorProgram'>,
  { revisionId, applicationId }: { revisionId: string; applicationId: string },
) {
  return tx.governorProgram.findFirst({ where: { revisionId, applicationId }, orderBy: { issue: 'desc' } });
}

/** The limits a point's reading is judged by, as the rules take them: the manual's, or those inside them it is accepted by. */
export function limitOf(point: Point, accepted: AcceptedPoint | undefined): PointLimit {
  const { method, unit } = point;
  const { low, high, decimals } = accepted ?? point;
  return {
    ...{ decimals, method, unit: unit as BenchUnit },
    ...(low == null ? {} : { low: Number(low) }),
    ...(high == null ? {} : { high: Number(high) }),
  };
}

interface Limits {
  readonly low?: string | null | undefined;
  readonly high?: string | null | undefined;
}
export function limitsInWords({ low, high }: Limits, unit: string): string {
  if (low != null && high != null) return `${low} to ${high} ${unit}`;
  return low == null ? `at most ${high} ${unit}` : `at least ${low} ${unit}`;
}

interface Named {
  readonly airframe: string;
  readonly engine: string;
  readonly position: string;
}
export function applicationInWords({ airframe, engine, position }: Named): string {
  return `${airframe}, ${engine}, ${position}`;
}

/** What an adjustment opens again: what the program says of it; every point where it says nothing. */
export function reopenedBy({ adjustments, points }: ProgramContent, what: string): string[] {
  const known = adjustments.find((one) => one.what.toLowerCase() === what.toLowerCase());
  return known ? known.reopens : points.map(({ name }) => name);
}

/** The application of a work order in words, for sentences of refusal. */
export async function applicationNamed(tx: Pick<Tx, 'application'>, id: string): Promise<string> {
  return applicationInWords(found(await tx.application.findUnique({ where: { id } }), 'This application'));
}
