import { randomUUID } from 'node:crypto';
import type { Tx } from '../../platform/database/client.ts';
import { deviceWords } from '../../platform/http/devices.ts';
import type { SignedInRequest } from '../../platform/http/operation.ts';

const twelveHours = 12 * 60 * 60 * 1000;

/** A new session id at sign-in, so that one planted before is worth nothing. It ends after twelve hours, or sooner if told. */
export async function startSession(
  request: SignedInRequest,
  personId: string,
  how: { by: 'password' | 'badge'; forMilliseconds?: number },
): Promise<void> {
  await request.session.regenerate();
  const now = Date.now();
  request.session.personId = personId;
  request.session.ref = randomUUID();
  request.session.by = how.by;
  request.session.device = deviceWords(request.headers['user-agent']);
  request.session.startedAt = now;
  request.session.seenAt = now;
  request.session.endsAt = now + Math.min(twelveHours, how.forMilliseconds ?? twelveHours);
}

/** Ends every session of a person, but one when it is named by its secret id. */
export async function endSessions(tx: Tx, personId: string, keep = ''): Promise<void> {
  await tx.$executeRaw`DELETE FROM session WHERE sess ->> 'personId' = ${personId} AND sid <> ${keep}`;
}

/** No device remembers the person any more: a badge is not enough until they sign in fully again. */
export async function forgetDevices(tx: Tx, personId: string): Promise<void> {
  await tx.deviceSignIn.deleteMany({ where: { personId } });
}
