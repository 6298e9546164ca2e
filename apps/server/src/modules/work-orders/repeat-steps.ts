import { Problem } from '@hubwright/contracts/problems';
import type { Reads } from '../../platform/database/reads.ts';
import { insertSteps, type NewStep } from './splice-steps.ts';
import { plainTitle, type StandingStep, stepAgain } from './step-again.ts';
import type { SignedStep, Signing } from './step-signing.ts';

const testSheets: ReadonlySet<string> = new Set(['angles', 'function-test', 'static-balance']);

/** Tests of a built unit: its angles, a function test, its balance, or what is measured of it as a whole, before or after its build is closed. */
export function isBuildTest({ phase, kind, sheet, traveler }: TestShape): boolean {
  const sheetKind = (sheet as { kind?: string } | null)?.kind;
  const isOwn = traveler.partClass === 'assembly' && (phase === 'build' || phase === 'final');
  return isOwn && (kind === 'measure' || testSheets.has(sheetKind ?? ''));
}
type TestShape = Pick<SignedStep, 'phase' | 'kind' | 'sheet'> & { traveler: { partClass: string } };

/** Signed steps of the build that may be done again, and what follows it: looked at again in any case. */
export async function repeatableSteps(models: Reads['models'], test: { id: string; travelerId: string }) {
  const signed = await models.travelerStep.findMany({
    where: { travelerId: test.travelerId, state: 'signed', phase: { in: ['build', 'final'] }, id: { not: test.id } },
    orderBy: { sequence: 'asc' },
    include: { measures: { orderBy: { sequence: 'asc' } } },
  });
  // What was done again since stands for what it repeats.
  const latest = signed.filter(
    ({ title }, index) => !signed.slice(index + 1).some((later) => plainTitle(later.title) === plainTitle(title)),
  );
  return {
    steps: latest.filter(({ kind }) => kind !== 'inspect'),
    follow: latest.filter(({ kind }) => kind === 'inspect'),
  };
}

/**
 * The named steps, the failed test and whatever inspection follows the build, once more behind the last that was signed. Throws
 * `not-repeatable`. Answers their titles in order.
 */
export async function repeatSteps(context: Signing, test: SignedStep, stepIds: readonly string[]): Promise<string[]> {
  const { tx } = context;
  const { steps, follow } = await repeatableSteps(tx, test);
  const known = new Set(steps.map(({ id }) => id));
  const strange = stepIds.findIndex((id) => !known.has(id));
  if (strange >= 0)
    throw new Problem('not-repeatable', 'A named step is no signed step of this build', {}, [
      { pointer: `/repeat/${strange}`, detail: 'Choose among the signed steps of the build' },
    ]);
  const chosen = steps.filter(({ id }) => stepIds.includes(id));
  const again = [...chosen, test].toSorted((one, other) => one.sequence - other.sequence);
  const copies = [...again, ...follow].map((step) => repeatOf(step, plainTitle(test.title)));
  const done = await tx.travelerStep.aggregate({
    where: { travelerId: test.travelerId, state: { not: 'open' } },
    _max: { sequence: true },
  });
  await insertSteps(context, { travelerId: test.travelerId, after: done._max.sequence ?? 0 }, copies);
  return copies.map(({ title }) => title);
}

function repeatOf(step: StandingStep, failed: string): NewStep {
  return { ...stepAgain(step, `the failed ${failed.toLowerCase()}`), branch: null };
}
