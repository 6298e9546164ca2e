import type { Input, Reply } from '@hubwright/contracts/operation';
import type { reminderOperations } from '@hubwright/contracts/reminders/operations';
import { Inject, Injectable, StreamableFile } from '@nestjs/common';
import { CLOCK, type Clock } from '../../platform/command/clock.ts';
import { ShopZone } from '../../platform/command/shop-zone.ts';
import { found } from '../../platform/command/version.ts';
import { Reads } from '../../platform/database/reads.ts';
import { Mailer } from '../../platform/mail/mailer.ts';
import { KeptDue } from '../due-dates/public.ts';
import { askThrough } from '../kits/public.ts';
import { type LettersAsked, lettersDue, lettersOf } from './due-letters.ts';
import { keptLetter } from './kept-letter.ts';
import { type LetterContent, type LetterTo, letterText } from './letter-text.ts';
import { lettersSql } from './letters.sql.ts';
import { printLetter } from './print-letter.ts';
import { noMailBecause, settingsInForce } from './settings-in-force.ts';
import { contentOf } from './write-letters.ts';

@Injectable()
export class ReminderQueries {
  constructor(
    @Inject(Reads) private readonly reads: Reads,
    @Inject(CLOCK) private readonly clock: Clock,
    @Inject(ShopZone) private readonly zone: ShopZone,
    @Inject(Mailer) private readonly mailer: Mailer,
    @Inject(KeptDue) private readonly kept: KeptDue,
  ) {}

  async settings(): Promise<Reply<typeof reminderOperations.reminderSettings>> {
    const settings = await settingsInForce(askThrough(this.reads));
    return {
      ...settings,
      since: settings.since?.toISOString() ?? null,
      printOnlyBecause: noMailBecause(settings, this.mailer.printOnlyBecause),
    };
  }

  async choice(customerId: string): Promise<Reply<typeof reminderOperations.reminderChoice>> {
    found(
      await this.reads.models.customer.findUnique({ where: { id: customerId }, select: { id: true } }),
      'This customer',
    );
    const said = await this.reads.sql<
      Reply<typeof reminderOperations.reminderChoice>['said'][number] & { version: number }
    >(
      `SELECT r.wants_letters AS "wantsLetters", r.reason, r.said_on::text AS "saidOn", r.sequence AS version, p.display_name AS by,
         to_char(r.at AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.MS"Z"') AS at
       FROM reminder_choices r JOIN people p ON p.id = r.person_id WHERE r.customer_id = $1::uuid ORDER BY r.sequence DESC LIMIT 50`,
      [customerId],
    );
    return { wantsLetters: said[0]?.wantsLetters ?? true, version: said[0]?.version ?? 0, said };
  }

  async due(input: Input<typeof reminderOperations.dueLetters>): Promise<Reply<typeof reminderOperations.dueLetters>> {
    const asked = await this.asked();
    const { limit, after = '' } = input;
    const letters = await lettersDue(askThrough(this.reads), asked, { after, limit: limit + 1 });
    const shown = letters.slice(0, limit);
    return {
      rows: shown.map((letter) => ({ ...letter, units: letter.units.map(({ countsFrom: _, ...unit }) => unit) })),
      next: letters.length > limit ? (shown.at(-1)?.customer.code ?? null) : null,
      today: asked.today,
      printOnlyBecause: noMailBecause(asked.settings, asked.printOnlyBecause),
      isOn: asked.settings.isOn,
    };
  }

  async preview(customerId: string): Promise<Reply<typeof reminderOperations.previewLetter>> {
    const { content, to, email } = await this.dueTo(customerId);
    return {
      to: { name: to.name, email, address: to.address },
      subject: content.subject,
      text: letterText(content, to),
    };
  }

  async previewPdf(customerId: string): Promise<StreamableFile> {
    const { content, to } = await this.dueTo(customerId);
    return pdf(await printLetter(content, to, this.clock.now()), 'letter-preview');
  }

  async letters({
    limit,
    after,
    customerId,
    state,
  }: Input<typeof reminderOperations.listLetters>): Promise<Reply<typeof reminderOperations.listLetters>> {
    const before = /^RL-\d{1,12}$/.test(after ?? '') ? after : null;
    const rows = await this.reads.sql<Reply<typeof reminderOperations.listLetters>['rows'][number]>(lettersSql, [
      ...[before, customerId ?? null, state ?? null, limit + 1],
    ]);
    const shown = rows.slice(0, limit);
    return { rows: shown, next: rows.length > limit ? (shown.at(-1)?.number ?? null) : null };
  }

  async letterPdf(letterId: string): Promise<StreamableFile> {
    const { content, to, at } = await keptLetter(this.reads, letterId);
    return pdf(await printLetter(content, to, at), content.number);
  }

  private async asked(): Promise<LettersAsked> {
    await this.kept.upToDate();
    return {
      today: await this.zone.today(this.clock.now()),
      settings: await settingsInForce(askThrough(this.reads)),
      printOnlyBecause: this.mailer.printOnlyBecause,
    };
  }

  private async dueTo(customerId: string): Promise<{ content: LetterContent; to: LetterTo; email: string }> {
    const asked = await this.asked();
    const [letter] = await lettersOf(askThrough(this.reads), [customerId], asked);
    const due = found(letter, 'A letter to this customer that is due today');
    const shop = found(await this.reads.models.shopProfile.findUnique({ where: { id: 1 } }), 'The shop profile');
    const content = contentOf({ number: '', units: due.units }, asked.settings, {
      shopName: shop.name,
      today: asked.today,
    });
    return { content, to: { customer: due.customer.name, ...due.to }, email: due.to.email };
  }
}

function pdf(bytes: Buffer, name: string): StreamableFile {
  return new StreamableFile(bytes, { type: 'application/pdf', disposition: `inline; filename="${name}.pdf"` });
}
