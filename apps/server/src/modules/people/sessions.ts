import type { SignedInRequest } from '../../platform/http/operation.ts';

/** A new session id at sign-in, so that one planted before is worth nothing. */
export async function startSession(request: SignedInRequest, personId: string): Promise<void> {
  await request.session.regenerate();
  request.session.personId = personId;
  request.session.startedAt = Date.now();
  request.session.seenAt = Date.now();
}
