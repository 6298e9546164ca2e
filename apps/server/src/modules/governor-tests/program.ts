import type { ProgramContent } from '@hubwright/contracts/governor-tests/program';
import type { BenchUnit, PointLimit } from '@hubwright/rules/governor';
import { found } from '../../platform/command/version.ts';
import type { Tx } from '../../platform/database/client.ts';

export type Point = ProgramContent['points'][number];

/** The newest issue for a revision and application: what is tested by. */
export function currentProgram(
  tx: Pick<Tx, 'governorProgram'>,
  { revisionId, applicationId }: { revisionId: string; applicationId: string },
) {
  return tx.governorProgram.findFirst({ where: { revisionId, applicationId }, orderBy: { issue: 'desc' } });
}

/** A point's limits as the rules take them. */
export function limitOf({ low, high, decimals, method, unit }: Point): PointLimit {
  return {
    ...{ decimals, method, unit: unit as BenchUnit },
    ...(low === undefined ? {} : { low: Number(low) }),
    ...(high === undefined ? {} : { high: Number(high) }),
  };
}

export function limitsInWords({ low, high, unit }: Point): string {
  if (low !== undefined && high !== undefined) return `${low} to ${high} ${unit}`;
  return low === undefined ? `at most ${high} ${unit}` : `at least ${low} ${unit}`;
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
