import type { Reply } from '@hubwright/contracts/operation';
import type { peopleOperations } from '@hubwright/contracts/people/operations';
import type { Role } from '@hubwright/contracts/roles';
import { Inject, Injectable } from '@nestjs/common';
import { found } from '../../platform/command/version.ts';
import { fromDbDate, fromDbDateOrNull } from '../../platform/database/dates.ts';
import { Reads } from '../../platform/database/reads.ts';

@Injectable()
export class PeopleQueries {
  constructor(@Inject(Reads) private readonly reads: Reads) {}

  async me(personId: string): Promise<Reply<typeof peopleOperations.me>> {
    const [person, shop] = await Promise.all([
      this.reads.models.person.findUnique({ where: { id: personId } }),
      this.reads.models.shopProfile.findUnique({ where: { id: 1 } }),
    ]);
    const { id, displayName, initials, roles, pinHash } = found(person, 'This person');
    return {
      id,
      displayName,
      initials,
      roles: roles as Role[],
      hasPin: pinHash !== null,
      shop: {
        name: shop?.name ?? '',
        zone: shop?.zone ?? 'UTC',
        currency: shop?.currency ?? 'USD',
        units: shop?.units ?? 'inch',
      },
    };
  }

  async setUpNeeded(): Promise<{ needed: boolean }> {
    return { needed: (await this.reads.models.person.count()) === 0 };
  }

  async list() {
    const people = await this.reads.models.person.findMany({
      orderBy: { displayName: 'asc' },
      include: { authorisations: { orderBy: { validFrom: 'desc' } } },
      take: 500,
    });
    return {
      rows: people.map((person) => ({
        ...person,
        authorisations: person.authorisations.map((held) => ({
          ...held,
          validFrom: fromDbDate(held.validFrom),
          expiresOn: fromDbDateOrNull(held.expiresOn),
          revokedOn: fromDbDateOrNull(held.revokedOn),
        })),
      })),
    };
  }

  async shop() {
    return found(await this.reads.models.shopProfile.findUnique({ where: { id: 1 } }), 'The shop profile');
  }
}
