import type { Operation } from '@hubwright/contracts/operation';
import { Problem } from '@hubwright/contracts/problems';
import type { Actor } from '../../platform/command/actor.ts';
import type { Context } from '../../platform/command/command.ts';
import type { Prisma } from '../../platform/database/generated/client.ts';
import { contentHashOf, type HeldAuthorisation } from '../people/public.ts';

interface ToSign {
  readonly lotId: string;
  readonly kind: 'scrapped' | 'destroyed' | 'suspicion-decided' | 'lost-at-vendor' | 'taken-back' | 'rejected';
  readonly meaning: string;
  /** Everything the people saw and signed, as JSON. */
  readonly content: object;
  readonly authorisation?: HeldAuthorisation;
  /** The sentence of the witness, whose secret the runner has checked in this same command. */
  readonly witnessMeaning?: string;
}

type Signing = Pick<Context<Operation>, 'tx' | 'now' | 'actor' | 'entryId' | 'newId' | 'countersigner' | 'signOffs'>;

/**
 * A signature about a lot, and the witness's beside it on the same content. `sign_offs` belong to a work order and a manual
 * revision, which stock does not have; the chained entry names each with its hash like any signature.
 */
export async function writeStockSignature(context: Signing, signed: ToSign): Promise<string> {
  const { tx, now, actor, entryId, newId, countersigner } = context;
  const { lotId, kind, meaning, content, authorisation, witnessMeaning } = signed;
  const contentHash = contentHashOf(content);
  const row = {
    lotId,
    kind,
    content,
    contentHash,
    signedAt: now,
    entryId,
  } satisfies Partial<Prisma.StockSignatureCreateManyInput>;
  if (witnessMeaning !== undefined && countersigner === undefined)
    throw new Error('A witness signs only when the runner checked them');
  const rows: Prisma.StockSignatureCreateManyInput[] = [
    { ...row, id: newId(), role: 'signer', meaning, personId: actor.personId, ...heldAs(authorisation) },
  ];
  if (witnessMeaning !== undefined && countersigner !== undefined)
    rows.push({ ...row, id: newId(), role: 'witness', meaning: witnessMeaning, personId: countersigner });
  await tx.stockSignature.createMany({ data: rows });
  context.signOffs.push(...rows.map(({ id }) => ({ id, contentHash })));
  return contentHash;
}

function heldAs(authorisation: HeldAuthorisation | undefined) {
  if (!authorisation) return {};
  const { id, process, level, validFrom, expiresOn } = authorisation;
  return { authorisation: { id, process, level, validFrom, expiresOn } };
}

/** Throws `second-person-needed` for somebody who names themselves. */
export function refuseOwnWitness(witnessId: string, actor: Actor): void {
  if (witnessId !== actor.personId) return;
  throw new Problem('second-person-needed', 'Nobody is their own witness', {}, [
    { pointer: '/witnessId', detail: 'Choose somebody else who saw it' },
  ]);
}
