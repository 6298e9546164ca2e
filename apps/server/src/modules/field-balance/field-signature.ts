import type { Operation } from '@hubwright/contracts/operation';
import type { Context } from '../../platform/command/command.ts';
import { contentHashOf, type HeldAuthorisation } from '../people/public.ts';

/** What a signature of a balance is about and what it says. */
export interface ToSign {
  readonly balance: { readonly id: string };
  readonly kind: 'set-up' | 'balanced' | 'released';
  readonly meaning: string;
  /** Everything the person saw and signed, as JSON. */
  readonly content: object;
  readonly authorisation: HeldAuthorisation;
  readonly instrumentId?: string;
}

type Signing = Pick<Context<Operation>, 'tx' | 'now' | 'actor' | 'entryId' | 'newId' | 'signOffs'>;

/**
 * A signature of a balance on the aircraft. `sign_offs` belong to a work order and a manual revision, which this order does not
 * have: content and hash are kept here, and the chained entry names both like any signature's.
 */
export async function writeFieldSignature(
  context: Signing,
  signed: ToSign,
): Promise<{ id: string; contentHash: string }> {
  const { tx, now, actor, entryId } = context;
  const { balance, kind, meaning, content, authorisation, instrumentId } = signed;
  const id = context.newId();
  const contentHash = contentHashOf(content);
  const { id: authorisationId, process, level, validFrom, expiresOn } = authorisation;
  const heldAs = { id: authorisationId, process, level, validFrom, expiresOn };
  await tx.fieldSignature.create({
    data: {
      ...{ id, fieldBalanceId: balance.id, kind, meaning, content, contentHash, authorisation: heldAs },
      ...{ personId: actor.personId, signedAt: now, entryId },
      ...(instrumentId === undefined ? {} : { instrumentId }),
    },
  });
  context.signOffs.push({ id, contentHash });
  return { id, contentHash };
}
