import { Problem } from '@hubwright/contracts/problems';
import { type MediaStanding, mediaStanding } from '@hubwright/rules/peening';
import { dateIn } from '../../platform/command/clock.ts';
import { found, sameVersion } from '../../platform/command/version.ts';
import type { Tx } from '../../platform/database/client.ts';

/** Newest first; ids are made in time's order. */
export const newestChecks = { orderBy: [{ checkedAt: 'desc' as const }, { id: 'desc' as const }] };

interface Checked {
  readonly everyDays: number;
  readonly everyHours: string | null;
  readonly checks: readonly {
    readonly passed: boolean;
    readonly checkedAt: Date;
    readonly meterHours: string | null;
  }[];
}

/** How a media lot stands by its newest check, today and, where its hours count, at a reading of the machine's counter. */
export function standingOf(
  media: Checked,
  at: { today: string; zone: string; hours?: string | null | undefined },
): MediaStanding {
  const [newest] = media.checks;
  const hours = (text: string | null | undefined) => (text ? Number(text) : undefined);
  return mediaStanding({
    everyDays: media.everyDays,
    everyHours: hours(media.everyHours),
    checked: newest && {
      on: dateIn(at.zone, newest.checkedAt),
      passed: newest.passed,
      atHours: hours(newest.meterHours),
    },
    today: at.today,
    hours: hours(at.hours),
  });
}

/** What is in a machine now, fit to begin with. Throws `media-missing`, `media-unchecked`, `media-overdue` or `media-failed`. */
export async function fitMedia(
  tx: Tx,
  machine: { id: string; code: string },
  at: { today: string; hours?: string | undefined },
) {
  const media = await tx.peeningMedia.findFirst({
    where: { machineId: machine.id, takenOutAt: null },
    include: { checks: { ...newestChecks, take: 1 } },
  });
  if (!media) throw new Problem('media-missing', `${machine.code} has no media lot on record`);
  const { state, dueOn, dueAtHours } = standingOf(media, { ...at, zone: await zoneOf(tx) });
  const reasons = media.checks[0]?.reasons ?? [];
  if (state === 'unchecked') throw new Problem('media-unchecked', `${media.code} was not checked since it was put in`);
  if (state === 'failed') throw new Problem('media-failed', `${media.code}: ${reasons.join(' ')}`, { reasons });
  if (state === 'overdue') {
    const until = dueAtHours === undefined ? dueOn : `${dueOn} or ${dueAtHours} hours`;
    throw new Problem('media-overdue', `The last check of ${media.code} held until ${until}`, { dueOn });
  }
  return media;
}

/** A media lot that is in its machine. Throws `media-out`. */
export async function mediaIn(tx: Tx, mediaId: string, expectedVersion: number | undefined) {
  const media = found(
    await tx.peeningMedia.findUnique({ where: { id: mediaId }, include: { machine: true } }),
    'This media lot',
  );
  sameVersion(media.version, expectedVersion);
  if (media.takenOutAt) throw new Problem('media-out', `${media.code} was taken out of ${media.machine.code}`);
  return media;
}

async function zoneOf(tx: Tx): Promise<string> {
  const shop = await tx.shopProfile.findUnique({ where: { id: 1 }, select: { zone: true } });
  return shop?.zone ?? 'UTC';
}
