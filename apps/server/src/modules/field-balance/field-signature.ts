import type { Operation } from '@hubwright/contracts/operation';
import type { Context } from '../../platform/command/command.ts';
import { type Countersignature, contentHashOf, type HeldAuthorisation } from '../people/public.ts';

/** What a signature of a balance is about and what it says. */
export interface ToSign {
  readonly balance: { readonly id: string };
  readonly kind: 'set-up' | 'balanced' | 'released' | 'reviewed';
  readonly meaning: string;
  /** Everything the person saw and signed, as JSON. */
  readonly content: object;
  readonly authorisation: HeldAuthorisation;
  readonly instrumentId?: string;
}

export type FieldSigning = Pick<
  Context<Operation>,
  'tx' | 'now' | 'actor' | 'entryId' | 'newId' | 'signOffs' | 'countersigner'
>;

/**
 * A signature of a balance on the aircraft. `sign_offs` belong to a work order and a manual revision, which this order does not
 * have: content and hash are kept here, and the chained entry names both like any signature's.
 */
export async function writeFieldSignature(
  context: FieldSigning,
  signed: ToSign,
): Promise<{ id: string; contentHash: string }> {
  return write(context, signed, { personId: context.actor.personId });
}

/**
 * The second signature, of the person whose secret the runner has checked in this same command; it binds the same content and names no
 * instrument. Anyone else's name here is a mistake of the program.
 */
export async function writeFieldCountersignature(
  context: FieldSigning,
  { instrumentId: _, ...signed }: Omit<ToSign, 'authorisation'>,
  by: Countersignature,
): Promise<void> {
  if (context.countersigner !== by.personId)
    throw new Error('A countersignature is written only for whom the runner checked');
  const { personId, countersignsId, meaning, authorisation } = by;
  await write(context, { ...signed, kind: 'supervised', meaning, authorisation }, { personId, countersignsId });
}

async function write(
  context: FieldSigning,
  signed: Omit<ToSign, 'kind'> & { kind: ToSign['kind'] | 'supervised' },
  by: { personId: string; countersignsId?: string },
): Promise<{ id: string; contentHash: string }> {
  const { tx, now, entryId } = context;
  const { balance, kind, meaning, content, authorisation, instrumentId } = signed;
  const id = context.newId();
  const contentHash = contentHashOf(content);
  const { id: authorisationId, process, level, validFrom, expiresOn } = authorisation;
  const heldAs = { id: authorisationId, process, level, validFrom, expiresOn };
  await tx.fieldSignature.create({
    data: {
      ...{ id, fieldBalanceId: balance.id, kind, meaning, content, contentHash, authorisation: heldAs },
      ...{ ...by, signedAt: now, entryId },
      ...(instrumentId === undefined ? {} : { instrumentId }),
    },
  });
  context.signOffs.push({ id, contentHash });
  return { id, contentHash };
}
