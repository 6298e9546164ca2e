import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { Stockroom } from '../../../../../tests/support/stockroom.ts';
import { Reads } from '../../platform/database/reads.ts';
import { currentPolicy } from './allocation-policy.ts';
import { askThrough } from './ask.ts';
import { type AllOdds, currentOdds, likelyPercent, type OddsBasis } from './odds.ts';

describe('how likely open answers are a yes', () => {
  let room: Stockroom;
  beforeAll(async () => {
    room = await Stockroom.open();
    const customer = await room.customer('ODDS', ['maker-new']);
    // Eight quotes were approved within a day; two declined, one of them after three weeks. One more was answered today.
    for (let n = 0; n < 11; n += 1) {
      const { workOrderId } = await room.kit(`O${n}`, customer);
      const [sent, answered] = [n === 9 ? 30 : 10, n === 10 ? 0 : 9];
      await room.sql(
        `INSERT INTO quotes (id, work_order_id, number, kind, revision, state, currency, subtotal_minor, tax_percent, tax_minor, total_minor, valid_until, sent_at, decided_at, created_at)
         VALUES (uuidv7(), $1, $2, 'firm', 1, $3, 'EUR', 1, '0', 0, 1, current_date, now() - $4::int * interval '1 day', now() - $5::int * interval '1 day', now())`,
        [workOrderId, `Q-O${n}`, n < 8 || n === 10 ? 'approved' : 'declined', sent, answered],
      );
    }
  }, 120_000);
  afterAll(() => room.close());

  const basis = async (): Promise<OddsBasis> => {
    const ask = askThrough(room.shop.running.app.get(Reads));
    const [policy, today] = [await currentPolicy(ask), room.day(0)];
    return { today, policy, odds: await currentOdds(ask, { today, zone: 'UTC', policy }) };
  };

  it('are what the shop said, worth ten answers, and its own answers up to yesterday', async () => {
    const { odds } = await basis();
    // (8 + 0.85 · 10) / (10 + 10); of old ones none of one: (0 + 0.6 · 10) / 11.
    expect(odds.quoteOut).toEqual({ percent: 83, said: 85, yes: 8, asked: 10 });
    expect(odds.quoteOld).toEqual({ percent: 55, said: 60, yes: 0, asked: 1 });
    expect(odds.estimateOut).toEqual({ percent: 80, said: 80, yes: 0, asked: 0 });
  });

  it('are asked for a finding beyond what was approved until its own price is answered', async () => {
    const known = await basis();
    const odds: AllOdds = { ...known.odds, extraOut: { ...known.odds.extraOut, percent: 70 } };
    const of = (extra: Parameters<typeof likelyPercent>[0]['extra']) =>
      likelyPercent({ consent: 'approved', consentSince: known.today, extra }, { ...known, odds });
    expect([of(null), of('approved'), of('unpriced'), of('sent'), of('silent'), of('declined')]).toEqual([
      ...[null, null, 70, 70, 25, 0],
    ]);
  });
});
