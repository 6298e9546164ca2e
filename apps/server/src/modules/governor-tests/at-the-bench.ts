import { Problem } from '@hubwright/contracts/problems';
import { type HeldAuthorisation, requireAuthorisation, requireSupervised, usableBy } from '../people/public.ts';
import type { Signing } from '../work-orders/public.ts';

const need = { process: 'governor-bench', level: 'perform' } as const;

/** Under which authorisation a run begins; a trainee's with the supervisor who signed beside. */
export function mayBegin({ tx, actor, today }: Signing, supervisorId: string | undefined) {
  return requireSupervised(tx, actor, { ...need, today, supervisorId });
}

/**
 * Under which authorisation a run is gone on with: a trainee's only in a run that a supervisor stands by who still may. Throws
 * `run-unsupervised` or what an authorisation is refused with.
 */
export async function mayGoOn(
  { tx, actor, today }: Signing,
  { number, supervisorId }: { number: string; supervisorId: string | null },
): Promise<HeldAuthorisation> {
  const usable = await usableBy(tx, actor.personId, today);
  const isTrainee = usable.has('governor-bench trainee') && !usable.has('governor-bench perform');
  if (!isTrainee) return requireAuthorisation(tx, actor, { ...need, today });
  if (supervisorId === null)
    throw new Problem('run-unsupervised', `You do “governor-bench” as a trainee, and nobody supervises ${number}`);
  return (await requireSupervised(tx, actor, { ...need, today, supervisorId })).authorisation;
}
