import { Inject, Injectable } from '@nestjs/common';
import type { Actor } from '../../platform/command/actor.ts';
import { Reads } from '../../platform/database/reads.ts';

@Injectable()
export class WitnessQueries {
  constructor(@Inject(Reads) private readonly reads: Reads) {}

  /** Everybody who works here and has secrets of their own, but the person who asks. */
  async list(actor: Actor | undefined) {
    const people = await this.reads.models.person.findMany({
      where: { active: true, secretsOwn: true, ...(actor ? { id: { not: actor.personId } } : {}) },
      orderBy: { displayName: 'asc' },
      take: 500,
      select: { id: true, displayName: true, pinHash: true },
    });
    return { rows: people.map(({ pinHash, ...person }) => ({ ...person, hasPin: pinHash !== null })) };
  }
}
