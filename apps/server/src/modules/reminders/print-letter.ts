import { Paper } from '../../platform/print/paper.ts';
import {
  dueWords,
  type LetterContent,
  type LetterTo,
  optOutWords,
  requirementWords,
  unitName,
  whoDecides,
} from './letter-text.ts';

/** The same letter on paper: the same content gives the same bytes. */
export function printLetter(letter: LetterContent, to: LetterTo, at: Date): Promise<Buffer> {
  const paper = new Paper({
    ...{ title: letter.subject, shopName: letter.shopName, at },
    foot: letter.number === '' ? 'Preview, not sent' : `Letter ${letter.number}`,
  });
  paper.facts([
    ['To', to.customer],
    ['Attention', to.name],
    ['Address', to.address],
    ['Date', letter.madeOn],
  ]);
  if (letter.opening) paper.paragraph(letter.opening);
  for (const unit of letter.units) {
    paper.heading(unitName(unit));
    paper.paragraph(dueWords(unit));
    paper.facts([
      ['What governs', unit.governs],
      ['The interval is', requirementWords(unit.requirement)],
      ['Basis', unit.basis],
    ]);
  }
  paper.heading(whoDecides);
  if (letter.closing) paper.paragraph(letter.closing);
  paper.paragraph([letter.senderName, letter.shopName].filter(Boolean).join(', '));
  paper.paragraph(optOutWords(letter));
  return paper.finish();
}
