import { Problem } from '@hubwright/contracts/problems';
import { quoteOperations } from '@hubwright/contracts/quotes/operations';
import { defineCommand } from '../../platform/command/command.ts';
import { found } from '../../platform/command/version.ts';
import { fromDbDate } from '../../platform/database/dates.ts';

/** The desk reminded the customer, by whatever way; the note says what was said. */
export const sendChaser = defineCommand(quoteOperations.sendChaser, {
  async locks(input, tx) {
    const chaser = await tx.chaser.findUnique({ where: { id: input.chaserId }, include: { quote: true } });
    return [`work-order:${chaser?.quote.workOrderId ?? input.chaserId}`];
  },
  async execute({ tx, input, now }) {
    const chaser = found(
      await tx.chaser.findUnique({ where: { id: input.chaserId }, include: { quote: true } }),
      'This chaser',
    );
    const { quote } = chaser;
    if (chaser.sentAt) throw new Problem('chaser-done', `The chaser of ${fromDbDate(chaser.dueOn)} was sent already`);
    if (quote.state !== 'sent')
      throw new Problem('quote-not-open', `${quote.number} is ${quote.state}`, { state: quote.state });
    await tx.chaser.update({ where: { id: chaser.id }, data: { sentAt: now, note: input.note } });
    const version = quote.version + 1;
    await tx.quote.update({ where: { id: quote.id }, data: { version } });
    return {
      reply: { id: quote.id, version },
      subjects: [{ kind: 'quote', id: quote.id, before: quote.version, after: version }],
      facts: { chaser: fromDbDate(chaser.dueOn) },
      ...(input.note ? { reason: input.note } : {}),
    };
  },
});
