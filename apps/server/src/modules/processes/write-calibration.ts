import type { Operation } from '@hubwright/contracts/operation';
import { Problem } from '@hubwright/contracts/problems';
import { judgeCalibration } from '@hubwright/rules/measurement';
import type { Context } from '../../platform/command/command.ts';
import { fromDbDate, toDbDate } from '../../platform/database/dates.ts';

export type AsFound = 'good' | 'out' | 'not-said';

export interface ReadPoint {
  readonly nominal: string;
  readonly asFound: string;
  readonly asLeft: string;
  readonly allowed: string;
}

/**
 * What the readings say, or where there are none what was said. Throws `reading-wrong`, `found-otherwise`, and `as-left-out`
 * when it goes back into use although it still measures wrong.
 */
export function verdictOf(given: {
  points: readonly ReadPoint[];
  asFound?: AsFound | undefined;
  inService: boolean;
}): AsFound {
  if (given.points.length === 0) return given.asFound ?? 'not-said';
  for (const [index, { nominal, asFound, allowed }] of given.points.entries())
    refuseReading(index, { nominal, asFound, allowed });
  const judged = judgeCalibration(
    given.points.map((point) => ({
      nominal: Number(point.nominal),
      asFound: Number(point.asFound),
      asLeft: Number(point.asLeft),
      allowed: Number(point.allowed),
    })),
  );
  if (given.asFound && given.asFound !== judged.asFound)
    throw new Problem('found-otherwise', `The readings say ${judged.asFound}`, {}, [
      { pointer: '/asFound', detail: `The readings say ${judged.asFound}` },
    ]);
  if (given.inService && judged.asLeft === 'out')
    throw new Problem('as-left-out', `Its worst error as left is ${judged.worstLeft}`);
  return judged.asFound;
}

/** A reading in another unit is 25.4 times too large or too small; anything near that is asked about, not taken. */
function refuseReading(index: number, { nominal, asFound, allowed }: Omit<ReadPoint, 'asLeft'>): void {
  const wrong = (field: string, detail: string) =>
    new Problem('reading-wrong', detail, {}, [{ pointer: `/points/${index}/${field}`, detail }]);
  if (Number(allowed) <= 0) throw wrong('allowed', 'The error allowed is more than 0');
  const ratio = Number(nominal) === 0 ? 1 : Number(asFound) / Number(nominal);
  if (ratio > 20 || ratio < 0.05)
    throw wrong('asFound', `${asFound} for ${nominal} looks like another unit (1 in = 25.4 mm)`);
}

interface Written {
  readonly instrumentId: string;
  readonly calibratedOn: string;
  readonly asFound: AsFound;
  readonly points: readonly ReadPoint[];
}

type Writing = Pick<Context<Operation>, 'tx' | 'newId' | 'entryId' | 'actor'>;

export async function writeCalibration({ tx, newId, entryId, actor }: Writing, of: Written): Promise<string> {
  const id = newId();
  await tx.calibration.create({
    data: {
      ...{ id, instrumentId: of.instrumentId, asFound: of.asFound, points: of.points.map((point) => ({ ...point })) },
      ...{ calibratedOn: toDbDate(of.calibratedOn), recordedBy: actor.personId, entryId },
    },
  });
  return id;
}

/** Throws `calibration-older` when a newer calibration is on record: what came between two of them would be lost. */
export function refuseOlder(instrument: { tag: string; calibratedOn: Date }, calibratedOn: string): void {
  const before = fromDbDate(instrument.calibratedOn);
  if (calibratedOn >= before) return;
  const detail = `${instrument.tag} was calibrated on ${before}`;
  throw new Problem('calibration-older', detail, {}, [{ pointer: '/calibratedOn', detail }]);
}

/**
 * Puts every standing good sign-off under review that was made with the instrument since it was last known to be good: since
 * its last calibration found good, or ever where none was. Answers how many.
 */
export async function putUnderReview(
  { tx, newId }: Pick<Writing, 'tx' | 'newId'>,
  of: { instrumentId: string; calibrationId: string },
): Promise<number> {
  const good = await tx.calibration.findFirst({
    where: { instrumentId: of.instrumentId, asFound: 'good', id: { not: of.calibrationId } },
    orderBy: [{ calibratedOn: 'desc' }, { id: 'desc' }],
  });
  const shop = await tx.shopProfile.findUnique({ where: { id: 1 }, select: { zone: true } });
  const since = good ? fromDbDate(good.calibratedOn) : '0001-01-01';
  const rows = await tx.$queryRaw<{ id: string; work_order_id: string }[]>`
    SELECT s.id::text, s.work_order_id::text FROM sign_offs s
    WHERE s.instrument_id = ${of.instrumentId}::uuid AND s.result = 'pass' AND s.countersigns_id IS NULL
      AND (s.performed_at AT TIME ZONE ${shop?.zone ?? 'UTC'})::date >= ${since}::date
      AND NOT EXISTS (SELECT 1 FROM sign_offs n WHERE n.supersedes_id = s.id)
      AND NOT EXISTS (SELECT 1 FROM calibration_reviews r WHERE r.sign_off_id = s.id AND r.instrument_id = s.instrument_id AND r.decision IS NULL)
    ORDER BY s.performed_at, s.id`;
  await tx.calibrationReview.createMany({
    data: rows.map((row) => ({
      ...{ id: newId(), calibrationId: of.calibrationId, instrumentId: of.instrumentId },
      ...{ signOffId: row.id, workOrderId: row.work_order_id },
    })),
  });
  return rows.length + (await balancesUnderReview({ tx, newId }, { ...of, since, zone: shop?.zone ?? 'UTC' }));
}

/** The same of balances on the aircraft: the newest signature of each that names an instrument is what it rests on. */
async function balancesUnderReview(
  { tx, newId }: Pick<Writing, 'tx' | 'newId'>,
  of: { instrumentId: string; calibrationId: string; since: string; zone: string },
): Promise<number> {
  const rows = await tx.$queryRaw<{ id: string; balance: string }[]>`
    SELECT s.id::text, s.field_balance_id::text AS balance FROM field_signatures s JOIN field_balances b ON b.id = s.field_balance_id
    WHERE s.instrument_id = ${of.instrumentId}::uuid AND b.state <> 'abandoned'
      AND (s.signed_at AT TIME ZONE ${of.zone})::date >= ${of.since}::date
      AND NOT EXISTS (SELECT 1 FROM field_signatures n WHERE n.field_balance_id = b.id AND n.instrument_id IS NOT NULL
        AND (n.signed_at, n.id) > (s.signed_at, s.id))
      AND NOT EXISTS (SELECT 1 FROM field_reviews r WHERE r.field_signature_id = s.id AND r.decision IS NULL)
    ORDER BY s.signed_at, s.id`;
  await tx.fieldReview.createMany({
    data: rows.map(({ id, balance }) => ({
      ...{ id: newId(), calibrationId: of.calibrationId, instrumentId: of.instrumentId },
      ...{ fieldSignatureId: id, fieldBalanceId: balance },
    })),
  });
  return rows.length;
}
