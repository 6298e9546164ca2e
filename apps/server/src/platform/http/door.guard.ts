import type { Operation } from '@hubwright/contracts/operation';
import { Problem } from '@hubwright/contracts/problems';
import { type CanActivate, type ExecutionContext, Inject, Injectable } from '@nestjs/common';
import { type Actor, IDENTITY, type Identity, serverActor } from '../command/actor.ts';
import { Refusals } from '../command/refusals.ts';
import { mayCall } from '../command/runner.ts';
import { operationOf, type SignedInRequest } from './operation.ts';

const touchMilliseconds = 60_000;

/** The one door: same site, signed in, permitted. A route without an operation does not open. */
@Injectable()
export class DoorGuard implements CanActivate {
  constructor(
    @Inject(IDENTITY) private readonly identity: Identity,
    @Inject(Refusals) private readonly refusals: Refusals,
  ) {}

  async canActivate(context: ExecutionContext): Promise<boolean> {
    const request = context.switchToHttp().getRequest<SignedInRequest>();
    const operation = operationOf(context);
    if (!operation) throw new Problem('not-found', 'There is nothing at this address');
    if (operation.kind === 'command') sameSite(request);
    const actor = await this.actor(request);
    if (actor && operation.access !== 'public') refuseUnfinished(operation, actor, request);
    if (!actor) {
      if (operation.access !== 'public') throw new Problem('not-signed-in', 'Sign in first');
      request.actor = serverActor;
      return true;
    }
    request.actor = actor;
    try {
      mayCall(operation, actor);
    } catch (error) {
      if (error instanceof Problem) {
        await this.refusals.keep({
          personId: actor.personId,
          command: operation.id,
          problem: error.type,
          detail: error.detail,
          subject: request.params as Record<string, string>,
        });
      }
      throw error;
    }
    return true;
  }

  private async actor(request: SignedInRequest): Promise<Actor | undefined> {
    const { personId, seenAt, endsAt } = request.session;
    if (!personId || (endsAt !== undefined && endsAt <= Date.now())) return undefined;
    const actor = await this.identity.actor(personId);
    // A session is written at most once a minute, not at each read.
    if (actor && Date.now() - (seenAt ?? 0) > touchMilliseconds) request.session.seenAt = Date.now();
    return actor;
  }
}

/** Someone whose device is locked, or who has something to set up first, stands before a door that few operations open. */
function refuseUnfinished(operation: Operation, actor: Actor, request: SignedInRequest): void {
  if (request.session.lockedAt !== undefined && !operation.openTo.includes('locked'))
    throw new Problem('session-locked', 'This device is locked');
  if (actor.due === undefined || operation.openTo.includes('due')) return;
  throw actor.due === 'own-password'
    ? new Problem('own-password-due', 'The password in use was given by someone else')
    : new Problem('second-factor-due', 'There is no second factor yet');
}

/**
 * Refuses a write that another site made this browser send. Browsers say where a request comes from; programs that are not
 * browsers send neither header and carry no cookie by accident.
 */
function sameSite(request: SignedInRequest): void {
  const site = request.headers['sec-fetch-site'];
  if (site !== undefined && site !== 'same-origin' && site !== 'none')
    throw new Problem('cross-site', 'The request came from another site');
  const origin = request.headers.origin;
  if (origin !== undefined && hostOf(origin) !== request.headers.host)
    throw new Problem('cross-site', 'The request came from another origin');
}

function hostOf(origin: string): string | undefined {
  return URL.canParse(origin) ? new URL(origin).host : undefined;
}
