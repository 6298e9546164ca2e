import { fieldSupervisedMeaning } from '@hubwright/contracts/field-balance/operations';
import type { Operation } from '@hubwright/contracts/operation';
import { Problem } from '@hubwright/contracts/problems';
import type { Context } from '../../platform/command/command.ts';
import {
  type Authorised,
  type HeldAuthorisation,
  requireAuthorisation,
  requireSupervised,
  usableBy,
} from '../people/public.ts';
import { setUpOf, type WholeBalance } from './field-balance.ts';
import { type FieldSigning, type ToSign, writeFieldCountersignature, writeFieldSignature } from './field-signature.ts';

const need = { process: 'dynamic-balance', level: 'perform' } as const;
type Asking = Pick<Context<Operation>, 'tx' | 'actor' | 'today'>;

/** Under which authorisation a sheet or balance is signed; a trainee's with the supervisor who signs beside. */
export function maySign({ tx, actor, today }: Asking, supervisorId: string | undefined): Promise<Authorised> {
  return requireSupervised(tx, actor, { ...need, today, supervisorId });
}

/** Who stands beside a trainee's signature. */
export const supervisorOf = (balance: WholeBalance, signature: { readonly id: string }) =>
  balance.signatures.find(({ countersignsId }) => countersignsId === signature.id)?.personId;

/**
 * Under which authorisation readings and weights go on record: a trainee's only under a sheet that a supervisor signed beside who
 * still may. Throws `sheet-unsupervised` or what an authorisation is refused with.
 */
export async function mayBalance({ tx, actor, today }: Asking, balance: WholeBalance): Promise<HeldAuthorisation> {
  const usable = await usableBy(tx, actor.personId, today);
  if (!usable.has('dynamic-balance trainee') || usable.has('dynamic-balance perform'))
    return requireAuthorisation(tx, actor, { ...need, today });
  const setUp = setUpOf(balance);
  const supervisorId = setUp && supervisorOf(balance, setUp.signature);
  if (supervisorId === undefined)
    throw new Problem('sheet-unsupervised', `Nobody supervises the sheet of ${balance.number}`);
  return (await requireSupervised(tx, actor, { ...need, today, supervisorId })).authorisation;
}

/** The signature, and the supervisor's beside it where it is a trainee's. */
export async function writeSupervised(
  context: FieldSigning,
  signed: Omit<ToSign, 'authorisation'>,
  { authorisation, supervisor }: Authorised,
): Promise<{ id: string; contentHash: string }> {
  const written = await writeFieldSignature(context, { ...signed, authorisation });
  if (supervisor)
    await writeFieldCountersignature(context, signed, {
      ...{ ...supervisor, meaning: fieldSupervisedMeaning, countersignsId: written.id },
    });
  return written;
}
