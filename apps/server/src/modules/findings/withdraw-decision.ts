import type { Operation } from '@hubwright/contracts/operation';
import { Problem } from '@hubwright/contracts/problems';
import type { Context, Subject } from '../../platform/command/command.ts';
import { withdrawDemand } from '../kits/public.ts';
import { install } from '../units/public.ts';
import type { DecidableFinding } from './decidable.ts';

type Decided = DecidableFinding & { readonly disposition: string; readonly signOffId: string };

/**
 * Takes back what a disposition asked for and keeps it as it was. Throws `disposition-paid` where money already stands on it,
 * `disposition-carried-out` where parts are out of their bins for it or a replacement is fitted. Signed steps stay signed.
 */
export async function withdrawDecision(
  context: Context<Operation>,
  finding: Decided,
  reason: string,
): Promise<{ subjects: Subject[] }> {
  const { tx } = context;
  const quotes = await withdrawQuotes(context, finding);
  if (finding.disposition === 'reject') await bringBack(context, finding);
  const kits = await withdrawDemand(context, finding);
  await keepAsItWas(context, finding, reason);
  await tx.findingPart.deleteMany({ where: { findingId: finding.id } });
  await tx.travelerStep.updateMany({
    where: { findingId: finding.id, state: 'open' },
    data: { state: 'not-needed' },
  });
  await tx.finding.update({ where: { id: finding.id }, data: { endedStepIds: [], labourMinor: 0 } });
  return { subjects: [...kits, ...quotes] };
}

/** An offer nobody has answered is withdrawn whole: its other findings go on the next one. What was said yes to stands. */
async function withdrawQuotes({ tx }: Context<Operation>, { id, number }: Decided): Promise<Subject[]> {
  const quotes = await tx.quote.findMany({
    where: { lines: { some: { findingId: id } }, state: { in: ['draft', 'sent', 'silent', 'approved'] } },
    orderBy: { number: 'asc' },
  });
  const paid = quotes.find(({ state, kind }) => state === 'approved' || (kind === 'firm' && state !== 'draft'));
  if (paid) {
    const why = paid.state === 'approved' ? 'is approved' : 'is with the customer as the firm quote';
    throw new Problem('disposition-paid', `${paid.number}, which charges for ${number}, ${why}`, {
      quote: paid.number,
      state: paid.state,
    });
  }
  for (const { id: quoteId, version } of quotes)
    await tx.quote.update({ where: { id: quoteId }, data: { state: 'superseded', version: version + 1 } });
  return quotes.map((quote) => ({
    kind: 'quote',
    id: quote.id,
    before: quote.version,
    after: quote.version + 1,
  }));
}

/** A part that was rejected goes back to its position, and the work that ended with it goes on. */
async function bringBack(context: Context<Operation>, finding: Decided): Promise<void> {
  const { tx, today } = context;
  const { traveler, workOrder, number } = finding;
  const { itemId, position } = traveler;
  const others = await tx.finding.count({
    where: { travelerId: traveler.id, disposition: 'reject', id: { not: finding.id } },
  });
  if (traveler.partClass !== 'assembly' && others === 0) {
    const there = await tx.installation.findFirst({
      where: { parentId: workOrder.unitId, position, toDate: null },
      include: { item: true },
    });
    const elsewhere = await tx.installation.findFirst({ where: { itemId, toDate: null } });
    if (there && there.itemId !== itemId)
      throw new Problem(
        'disposition-carried-out',
        `${there.item.partNumber} ${there.item.serial ?? ''} took the place of what ${number} rejected at ${position}: the rejected part stays out`,
      );
    if (elsewhere && elsewhere.parentId !== workOrder.unitId)
      throw new Problem('disposition-carried-out', `What ${number} rejected sits in another unit now`);
    await install(context, { itemId, parentId: workOrder.unitId, position, from: today });
  }
  // Where another finding rejects the part too, its work has ended for that one as well.
  if (others > 0) return;
  await tx.travelerStep.updateMany({
    where: { id: { in: finding.endedStepIds }, state: 'not-needed' },
    data: { state: 'open' },
  });
}

async function keepAsItWas(
  { tx, now, newId, entryId }: Context<Operation>,
  finding: Decided,
  reason: string,
): Promise<void> {
  const parts = await tx.findingPart.findMany({
    where: { findingId: finding.id },
    orderBy: { position: 'asc' },
    include: { part: { select: { number: true, description: true } } },
  });
  const steps = await tx.travelerStep.findMany({
    where: { findingId: finding.id, state: { not: 'not-needed' } },
    orderBy: { sequence: 'asc' },
    select: { title: true },
  });
  const { disposition, labourMinor, overAndAbove, signOffId } = finding;
  await tx.supersededDisposition.create({
    data: {
      ...{ id: newId(), findingId: finding.id, disposition, labourMinor, overAndAbove, signOffId, reason },
      note: finding.dispositionNote,
      parts: parts.map(({ id, partId, part, position, quantity }) => ({ id, partId, ...part, position, quantity })),
      steps: steps.map(({ title }) => title),
      supersededAt: now,
      entryId,
    },
  });
}
