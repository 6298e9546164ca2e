import { randomUUID } from 'node:crypto';
import { Inject, Injectable, Logger, type OnApplicationBootstrap, type OnApplicationShutdown } from '@nestjs/common';
import { serverActor } from '../../platform/command/actor.ts';
import { CLOCK, type Clock } from '../../platform/command/clock.ts';
import { CommandRunner } from '../../platform/command/runner.ts';
import { Reads } from '../../platform/database/reads.ts';
import { LiveFeed } from '../../platform/live/live-feed.ts';
import { type Mail, Mailer } from '../../platform/mail/mailer.ts';
import { askThrough } from '../kits/public.ts';
import { claimLetter } from './claim-letter.command.ts';
import { keptLetter } from './kept-letter.ts';
import { letterText } from './letter-text.ts';
import { printLetter } from './print-letter.ts';
import { settingsInForce } from './settings-in-force.ts';
import { settleLetter } from './settle-letter.command.ts';

const everyMilliseconds = 30_000;
const batch = 50;

/**
 * Sends what lies in the outbox, after commit: claim (on record), send, outcome (on record), one letter after the other. At least once: a server
 * that dies between the mail server's yes and our note of it sends that letter again, under the same Message-ID. The other
 * choice, at most once, would lose letters silently; a letter twice is a nuisance, a letter never is a propeller overdue.
 */
@Injectable()
export class ReminderMail implements OnApplicationBootstrap, OnApplicationShutdown {
  private readonly log = new Logger('reminders');
  private timer: NodeJS.Timeout | undefined;
  private unsubscribe: (() => void) | undefined;
  private sending: Promise<void> | undefined;
  private again = false;
  private stopped = false;

  constructor(
    @Inject(Mailer) private readonly mailer: Mailer,
    @Inject(CommandRunner) private readonly runner: CommandRunner,
    @Inject(Reads) private readonly reads: Reads,
    @Inject(CLOCK) private readonly clock: Clock,
    @Inject(LiveFeed) private readonly live: LiveFeed,
  ) {}

  onApplicationBootstrap(): void {
    if (this.mailer.printOnlyBecause !== null) return;
    this.timer = setInterval(() => void this.sendDue(), everyMilliseconds);
    this.timer.unref();
    // What an earlier run of this server left lying.
    void this.sendDue();
    this.unsubscribe = this.live.subscribe(({ nouns }) => {
      if (nouns.includes('reminders')) void this.sendDue();
    });
  }

  async onApplicationShutdown(): Promise<void> {
    this.stopped = true;
    clearInterval(this.timer);
    this.unsubscribe?.();
    await this.sending;
  }

  /** Whoever asks while a run goes on gets one more run after it. Errors are logged, not thrown: the next run tries again. */
  async sendDue(): Promise<void> {
    this.again = true;
    this.sending ??= this.untilDone().finally(() => {
      this.sending = undefined;
    });
    await this.sending;
  }

  private async untilDone(): Promise<void> {
    while (this.again && !this.stopped) {
      this.again = false;
      try {
        for (const letterId of await this.dueNow()) if (!this.stopped) await this.deliver(letterId);
      } catch (error) {
        this.log.warn(`letters wait: ${error instanceof Error ? error.message : error}`);
      }
    }
  }

  private async dueNow(): Promise<string[]> {
    const rows = await this.reads.models.reminderDelivery.findMany({
      where: { nextTryAt: { lte: this.clock.now() } },
      orderBy: { nextTryAt: 'asc' },
      take: batch,
      select: { letterId: true },
    });
    return rows.map(({ letterId }) => letterId);
  }

  private async deliver(letterId: string): Promise<void> {
    const as = { actor: serverActor, key: randomUUID() };
    const { claimed, tries } = await this.runner.run(claimLetter, { ...as, input: { letterId } });
    if (!claimed) return;
    const outcome = await this.mailer.send(await this.mailOf(letterId));
    const input = { letterId, tries, ...outcome };
    await this.runner.run(settleLetter, { ...as, key: randomUUID(), input });
  }

  private async mailOf(letterId: string): Promise<Mail> {
    const { content, to, at, delivery } = await keptLetter(this.reads, letterId);
    const { senderName, senderEmail, replyTo } = await settingsInForce(askThrough(this.reads));
    return {
      from: { name: senderName || content.shopName, address: senderEmail },
      to: { name: delivery.toName || to.customer, address: delivery.toEmail },
      replyTo: replyTo || senderEmail,
      subject: content.subject,
      text: letterText(content, to),
      messageId: delivery.messageId,
      date: at,
      attachment: { filename: `${content.number}.pdf`, content: await printLetter(content, to, at) },
    };
  }
}
