import type { LetterUnit } from '@hubwright/contracts/reminders/shapes';

/** A letter as it was made: everything but to whom it goes. */
export interface LetterContent {
  readonly number: string;
  readonly shopName: string;
  readonly senderName: string;
  readonly replyTo: string;
  readonly subject: string;
  readonly opening: string;
  readonly closing: string;
  readonly madeOn: string;
  readonly units: readonly LetterUnit[];
}

export interface LetterTo {
  readonly customer: string;
  readonly name: string;
  readonly address: string;
}

/** The one line of caution. */
export const whoDecides =
  'These are likely dates and no permission to fly until then. The current approved manual and the operator’s authority decide.';

/** When a unit falls due, in the words of the letter. Always “likely”: nobody knows what will be flown. */
export function dueWords({ dueOn, earliest, latest, daysLeft, isOverdue }: LetterUnit): string {
  if (isOverdue)
    return `Overdue by what we have on record: likely date ${dueOn}. Please look at its times before the next flight.`;
  // By hours alone nobody knows that it is: the readings are old.
  if (daysLeft < 0)
    return `Its likely date, ${dueOn}, has gone by; only a reading of the meter tells whether it is due. Please send us one.`;
  const off = daysLeft === 0 ? 'today' : `in about ${daysLeft} day${daysLeft === 1 ? '' : 's'}`;
  const band =
    earliest !== null && latest !== null && earliest !== latest
      ? `, between ${earliest} and ${latest} in eight cases of ten`
      : '';
  const open = earliest !== null && latest === null ? `, perhaps as early as ${earliest}; how late nobody can say` : '';
  return `Likely due ${dueOn}, ${off}${band}${open}.`;
}

export function requirementWords(requirement: LetterUnit['requirement']): string {
  if (requirement === 'required') return 'required for this operation';
  return requirement === 'recommended' ? 'recommended' : 'not said to be required or recommended';
}

export function unitName({ designation, serial, registration }: LetterUnit): string {
  return `${designation}, serial ${serial}${registration === null ? '' : `, on ${registration}`}`;
}

export function optOutWords({ replyTo, shopName }: LetterContent): string {
  const how = replyTo === '' ? `Tell ${shopName}` : `Write to ${replyTo}`;
  return `You do not want these letters? ${how}, or say so by phone, and we write no more.`;
}

/** The whole letter as plain text, for e-mail. */
export function letterText(letter: LetterContent, to: LetterTo): string {
  const units = letter.units.map((unit, index) =>
    [
      `${index + 1}. ${unitName(unit)}`,
      `   ${dueWords(unit)}`,
      `   What governs: ${unit.governs}. The interval is ${requirementWords(unit.requirement)}.`,
      `   Basis: ${unit.basis}`,
    ].join('\n'),
  );
  const blocks = [
    letter.shopName,
    `${letter.madeOn}${letter.number === '' ? '' : `, letter ${letter.number}`}`,
    [to.customer, to.name].filter(Boolean).join('\n'),
    letter.opening,
    ...units,
    whoDecides,
    letter.closing,
    [letter.senderName, letter.shopName].filter(Boolean).join('\n'),
    optOutWords(letter),
  ];
  return `${blocks.filter(Boolean).join('\n\n')}\n`;
}
