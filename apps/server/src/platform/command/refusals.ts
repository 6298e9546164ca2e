import { Inject, Injectable } from '@nestjs/common';
import { Database } from '../database/client.ts';
import { CLOCK, type Clock } from './clock.ts';
import { IDS, type Ids } from './ids.ts';

/** Keeps what was asked for and refused, by permission or by a rule. Malformed requests are only counted, elsewhere. */
@Injectable()
export class Refusals {
  constructor(
    @Inject(Database) private readonly database: Database,
    @Inject(CLOCK) private readonly clock: Clock,
    @Inject(IDS) private readonly ids: Ids,
  ) {}

  async keep(refusal: {
    personId: string | null;
    command: string;
    problem: string;
    detail: string;
    subject: Record<string, string>;
  }): Promise<void> {
    await this.database.prisma.refusal.create({ data: { id: this.ids.next(), at: this.clock.now(), ...refusal } });
  }
}
