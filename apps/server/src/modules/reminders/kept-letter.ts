import { found } from '../../platform/command/version.ts';
import type { Reads } from '../../platform/database/reads.ts';
import type { LetterContent, LetterTo } from './letter-text.ts';

/** A letter as it was made, and to whom it goes. */
export async function keptLetter(reads: Reads, letterId: string) {
  const letter = found(
    await reads.models.reminderLetter.findUnique({
      where: { id: letterId },
      include: { customer: { select: { name: true } }, delivery: true },
    }),
    'This letter',
  );
  const delivery = found(letter.delivery, 'This letter');
  const to: LetterTo = { customer: letter.customer.name, name: delivery.toName, address: delivery.toAddress };
  return { content: letter.content as unknown as LetterContent, to, at: letter.at, delivery };
}
