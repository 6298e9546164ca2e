import { Inject, Injectable } from '@nestjs/common';
import { Database } from '../database/client.ts';
import { dateIn } from './clock.ts';

const keepMilliseconds = 30_000;

/** The shop's zone, read at most twice a minute: it hardly ever changes and every command needs it. */
@Injectable()
export class ShopZone {
  private known: { zone: string; readAt: number } | undefined;

  constructor(@Inject(Database) private readonly database: Database) {}

  async zone(): Promise<string> {
    if (this.known && Date.now() - this.known.readAt < keepMilliseconds) return this.known.zone;
    const profile = await this.database.prisma.shopProfile.findUnique({ where: { id: 1 }, select: { zone: true } });
    this.known = { zone: profile?.zone ?? 'UTC', readAt: Date.now() };
    return this.known.zone;
  }

  /** Today in the shop. */
  async today(now: Date): Promise<string> {
    return dateIn(await this.zone(), now);
  }
}
