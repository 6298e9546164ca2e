import { createHash } from 'node:crypto';
import type { Operation } from '@hubwright/contracts/operation';
import { Problem } from '@hubwright/contracts/problems';
import { canonicalJson } from '@hubwright/rules/chain';
import { dateIn } from '../../platform/command/clock.ts';
import type { Context } from '../../platform/command/command.ts';
import type { HeldAuthorisation } from './held-authorisation.ts';

/** One signature to write: what it is about, what it says, and under which authorisation it is given. */
export interface SignOffToWrite {
  readonly workOrderId: string;
  /** What was signed: a work order, a traveler step, a finding, a kit, a release… */
  readonly subject: { readonly kind: string; readonly id: string };
  readonly stepId?: string;
  /** The sentence signed: the operation's `signs`. */
  readonly meaning: string;
  readonly result: string;
  readonly authorisation: HeldAuthorisation;
  /** The manual revision the work was done by. */
  readonly revisionId: string;
  readonly instrumentId?: string;
  /** The tank or test system it was done in or with, and the lots of material used. */
  readonly equipmentId?: string;
  readonly lotIds?: readonly string[];
  /** When the work was done, if not now. */
  readonly performedAt?: string | undefined;
  /** Why it is signed on another day than it was done. */
  readonly lateReason?: string | undefined;
  /** Everything the person saw and signed, as JSON; its hash binds the signature to it. */
  readonly content: unknown;
  readonly supersedesId?: string;
}

/** What a command body passes on. */
type Signing = Pick<Context<Operation>, 'tx' | 'now' | 'today' | 'actor' | 'entryId' | 'newId' | 'signOffs'>;

/** The supervisor's signature beside a trainee's, on the same content. */
export interface Countersignature {
  /** The trainee's sign-off. */
  readonly countersignsId: string;
  readonly personId: string;
  readonly meaning: string;
  readonly authorisation: HeldAuthorisation;
}

/** SHA-256 (hex) of the canonical JSON of what was signed: FIPS 180-4 over RFC 8785. */
export function contentHashOf(content: unknown): string {
  return hashOfText(canonicalJson(content));
}

function hashOfText(text: string): string {
  return createHash('sha256').update(text).digest('hex');
}

/**
 * The only way a signature is written. The authorisation is copied as it is now; the content's hash binds the signature to
 * what was shown; text and hash are kept, and the hash also stands in the chained record entry. Throws `performed-in-future`, or `late-reason-missing` when the work was done on an earlier day of the shop.
 */
export async function writeSignOff(
  context: Signing,
  signOff: SignOffToWrite,
): Promise<{ id: string; contentHash: string; performedAt: string }> {
  return write(context, signOff, { personId: context.actor.personId });
}

/**
 * The second signature, of the person whose secret the runner has checked in this same command. It names no instrument: the trainee's
 * does. Anyone else's name here is a mistake of the program.
 */
export async function writeCountersignature(
  context: Signing & Pick<Context<Operation>, 'countersigner'>,
  { instrumentId: _, supersedesId: __, ...signOff }: SignOffToWrite,
  by: Countersignature,
): Promise<void> {
  if (context.countersigner !== by.personId)
    throw new Error('A countersignature is written only for whom the runner checked');
  const { personId, countersignsId, meaning, authorisation } = by;
  await write(context, { ...signOff, meaning, authorisation }, { personId, countersignsId });
}

async function write(
  context: Signing,
  signOff: SignOffToWrite,
  { personId, countersignsId = null }: { personId: string; countersignsId?: string | null },
): Promise<{ id: string; contentHash: string; performedAt: string }> {
  const { tx, now } = context;
  const performedAt = signOff.performedAt === undefined ? now : new Date(signOff.performedAt);
  await refuseImpossibleTime(context, performedAt, signOff.lateReason);
  const id = context.newId();
  const content = canonicalJson(signOff.content);
  const contentHash = hashOfText(content);
  const { id: authorisationId, process, level, validFrom, expiresOn } = signOff.authorisation;
  await tx.signOff.create({
    data: {
      id,
      workOrderId: signOff.workOrderId,
      stepId: signOff.stepId ?? null,
      subjectKind: signOff.subject.kind,
      subjectId: signOff.subject.id,
      meaning: signOff.meaning,
      result: signOff.result,
      personId,
      countersignsId,
      authorisation: { id: authorisationId, process, level, validFrom, expiresOn },
      revisionId: signOff.revisionId,
      instrumentId: signOff.instrumentId ?? null,
      equipmentId: signOff.equipmentId ?? null,
      lotIds: [...(signOff.lotIds ?? [])],
      performedAt,
      signedAt: now,
      lateReason: signOff.lateReason ?? null,
      content,
      contentHash,
      supersedesId: signOff.supersedesId ?? null,
      entryId: context.entryId,
    },
  });
  context.signOffs.push({ id, contentHash });
  return { id, contentHash, performedAt: performedAt.toISOString() };
}

async function refuseImpossibleTime(
  { tx, now, today }: Signing,
  performedAt: Date,
  lateReason: string | undefined,
): Promise<void> {
  if (performedAt > now)
    throw new Problem('performed-in-future', 'The work is dated in the future', {}, [
      { pointer: '/performedAt', detail: 'This lies in the future' },
    ]);
  if (performedAt.getTime() === now.getTime() || lateReason) return;
  const shop = await tx.shopProfile.findUnique({ where: { id: 1 }, select: { zone: true } });
  if (dateIn(shop?.zone ?? 'UTC', performedAt) < today)
    throw new Problem('late-reason-missing', 'This was done on an earlier day: say why it is signed today', {}, [
      { pointer: '/lateReason', detail: 'Say why this is signed late' },
    ]);
}
