import type { Reply } from '@hubwright/contracts/operation';
import type { accessOperations } from '@hubwright/contracts/people/access-operations';
import type { peopleOperations } from '@hubwright/contracts/people/operations';
import type { Role } from '@hubwright/contracts/roles';
import type { GuardBandMethod } from '@hubwright/rules/measurement';
import { Inject, Injectable } from '@nestjs/common';
import { IDENTITY, type Identity } from '../../platform/command/actor.ts';
import { found } from '../../platform/command/version.ts';
import { fromDbDate, fromDbDateOrNull } from '../../platform/database/dates.ts';
import { Reads } from '../../platform/database/reads.ts';
import { badgePicture } from './second-factor.ts';

interface SessionRow {
  sid: string;
  sess: {
    ref: string;
    personId: string;
    device: string;
    by: 'password' | 'badge';
    startedAt: number;
    seenAt: number;
  };
  name: string;
}

@Injectable()
export class PeopleQueries {
  constructor(
    @Inject(Reads) private readonly reads: Reads,
    @Inject(IDENTITY) private readonly identity: Identity,
  ) {}

  async me(personId: string, locked = false): Promise<Reply<typeof peopleOperations.me>> {
    const [actor, person, shop] = await Promise.all([
      this.identity.actor(personId),
      this.reads.models.person.findUnique({ where: { id: personId }, include: { secondFactor: true } }),
      this.reads.models.shopProfile.findUnique({ where: { id: 1 } }),
    ]);
    const { id, displayName, initials, roles, pinHash, secondFactor } = found(person, 'This person');
    return {
      id,
      displayName,
      initials,
      roles: roles as Role[],
      hasPin: pinHash !== null,
      hasSecondFactor: secondFactor !== null,
      due: actor?.due ?? null,
      locked,
      shop: {
        name: shop?.name ?? '',
        zone: shop?.zone ?? 'UTC',
        currency: shop?.currency ?? 'USD',
        units: shop?.units ?? 'inch',
        lockAfterMinutes: shop?.lockAfterMinutes ?? 10,
        guardBand: (shop?.guardBand ?? 'none') as GuardBandMethod,
      },
    };
  }

  async setUpNeeded(): Promise<{ needed: boolean }> {
    return { needed: (await this.reads.models.person.count()) === 0 };
  }

  async list() {
    const people = await this.reads.models.person.findMany({
      orderBy: { displayName: 'asc' },
      include: {
        authorisations: { orderBy: { validFrom: 'desc' } },
        badges: { where: { revokedAt: null } },
        secondFactor: { select: { personId: true } },
      },
      take: 500,
    });
    return {
      rows: people.map((person) => ({
        ...person,
        leftOn: fromDbDateOrNull(person.leftOn),
        badgeSince: person.badges[0]?.issuedAt.toISOString() ?? null,
        hasSecondFactor: person.secondFactor !== null,
        authorisations: person.authorisations.map((held) => ({
          ...held,
          validFrom: fromDbDate(held.validFrom),
          expiresOn: fromDbDateOrNull(held.expiresOn),
          revokedOn: fromDbDateOrNull(held.revokedOn),
        })),
      })),
    };
  }

  /** Sessions that stand, newest first: one person's, or everyone's. */
  async sessions(current: string, personId?: string): Promise<Reply<typeof accessOperations.listSessions>> {
    const found = await this.reads.sql<SessionRow>(
      `SELECT s.sid, s.sess, p.display_name AS name FROM session s JOIN people p ON p.id::text = s.sess ->> 'personId'
       WHERE s.expire > now() AND ($1::text IS NULL OR s.sess ->> 'personId' = $1)
         AND coalesce((s.sess ->> 'endsAt')::float8, 'Infinity') > extract(epoch FROM now()) * 1000
       ORDER BY (s.sess ->> 'startedAt')::float8 DESC LIMIT 500`,
      [personId ?? null],
    );
    return {
      rows: found.map(({ sid, sess, name }) => ({
        ref: sess.ref,
        personId: sess.personId,
        personName: name,
        device: sess.device,
        by: sess.by,
        since: new Date(sess.startedAt).toISOString(),
        lastSeen: new Date(sess.seenAt).toISOString(),
        isThis: sid === current,
      })),
    };
  }

  /** The badge a person carries, to be printed. */
  async badge(personId: string): Promise<Reply<typeof accessOperations.badgeToPrint>> {
    const badge = await this.reads.models.badge.findFirst({
      where: { personId, revokedAt: null },
      include: { person: true },
    });
    const { code, person } = found(badge, 'A badge of this person');
    const { displayName, initials } = person;
    return { code, displayName, initials, picture: badgePicture(code) };
  }

  async shop() {
    return found(await this.reads.models.shopProfile.findUnique({ where: { id: 1 } }), 'The shop profile');
  }
}
