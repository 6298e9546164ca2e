import { mediaOperations } from '@hubwright/contracts/peening/media-operations';
import type { mediaLimits } from '@hubwright/contracts/peening/media-shapes';
import { type Pointed, Problem } from '@hubwright/contracts/problems';
import { judgeMedia } from '@hubwright/rules/peening';
import type { z } from 'zod';
import { type Context, defineCommand } from '../../platform/command/command.ts';
import { requireAuthorisation } from '../people/public.ts';
import { doubtfulLots } from './doubtful-lots.ts';
import { mediaIn } from './media.ts';
import { refuseMeter } from './media-hours.ts';

const operation = mediaOperations.checkPeeningMedia;
type Checking = Context<typeof operation>;
type Limits = z.output<typeof mediaLimits>;

/** Kept as it was read. A failed check shuts the machine, and every lot since the last good one waits for an inspector's decision. */
export const checkMedia = defineCommand(operation, {
  locks: async ({ mediaId }, tx) => {
    const media = await tx.peeningMedia.findUnique({ where: { id: mediaId }, select: { machineId: true } });
    const lots = await doubtfulLots(tx, mediaId);
    const orders = [...new Set(lots.map(({ work_order_id }) => `work-order:${work_order_id}`))];
    return [`peening-machine:${media?.machineId}`, ...orders];
  },
  async execute(context) {
    const { tx, input, actor, today, expectedVersion } = context;
    const media = await mediaIn(tx, input.mediaId, expectedVersion);
    const need = { process: 'shot-peening', level: 'perform', today } as const;
    const authorisation = await requireAuthorisation(tx, actor, need);
    await refuseMeter(tx, media, input.meterHours);
    const { passed, reasons } = judged(media.limits as unknown as Limits, input);
    // Before the check is written, so that it is not its own last good one.
    const lots = passed ? [] : await doubtfulLots(tx, media.id);
    await write(context, { passed, reasons, lots });
    const version = media.version + 1;
    await tx.peeningMedia.update({ where: { id: media.id }, data: { version } });
    const doubtful = lots.map(({ lot, work_order, parts }) => ({ lot, workOrder: work_order, parts: [...parts] }));
    const { sieves, broken, clean, note, meterHours = null } = input;
    return {
      reply: { id: media.id, version, passed, reasons, doubtful },
      subjects: [
        { kind: 'peening-media', id: media.id, before: media.version, after: version },
        { kind: 'peening-machine', id: media.machineId },
        ...[...new Set(lots.map(({ lot_id }) => lot_id))].map((id) => ({ kind: 'peening-lot', id })),
        ...[...new Set(lots.map(({ work_order_id }) => work_order_id))].map((id) => ({ kind: 'work-order', id })),
      ],
      authorisation: { ...authorisation },
      facts: { code: media.code, sieves, broken, clean, note, meterHours, passed, reasons, doubtful },
    };
  },
});

/** Throws `sieves-missing` unless every sieve of the limits was read once, and no other. */
function judged(limits: Limits, { sieves, broken, clean }: Checking['input']) {
  const unread = limits.sieves.filter(({ name }) => sieves.filter((one) => one.name === name).length !== 1);
  const wrong: Pointed[] = sieves.flatMap(({ name }, index) =>
    limits.sieves.some((one) => one.name === name)
      ? []
      : [{ pointer: `/sieves/${index}/name`, detail: `The limits name no sieve “${name}”` }],
  );
  if (unread.length > 0)
    wrong.push({ pointer: '/sieves', detail: `Read once each: ${unread.map(({ name }) => name).join(', ')}` });
  const [first] = wrong;
  if (first) throw new Problem('sieves-missing', first.detail, {}, wrong);
  const number = (text: string | undefined) => (text === undefined ? undefined : Number(text));
  const sides = limits.sieves.map(({ name, low, high }) => ({ name, low: number(low), high: number(high) }));
  return judgeMedia(
    { sieves: sides, mostBroken: limits.mostBroken },
    { sieves: sieves.map(({ name, percent }) => ({ name, percent: Number(percent) })), broken, clean },
  );
}

async function write(
  { tx, input, actor, now, entryId, newId }: Checking,
  found: { passed: boolean; reasons: string[]; lots: Awaited<ReturnType<typeof doubtfulLots>> },
): Promise<void> {
  const { mediaId, sieves, broken, clean, note, meterHours = null } = input;
  const { passed, reasons, lots } = found;
  const id = newId();
  const who = { checkedBy: actor.personId, checkedAt: now, entryId };
  await tx.peeningCheck.create({
    data: { id, mediaId, sieves, broken, clean, note, meterHours, passed, reasons, ...who },
  });
  await tx.peeningReview.createMany({
    data: lots.map(({ lot_id, work_order_id }) => ({
      ...{ id: newId(), checkId: id, lotId: lot_id, workOrderId: work_order_id },
    })),
  });
}
