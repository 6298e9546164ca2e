// size: one story of letters, one mail server and one moved clock
import { customerOperations } from '@hubwright/contracts/customers/operations';
import { reminderOperations } from '@hubwright/contracts/reminders/operations';
import { addMonths } from '@hubwright/rules/dates';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import { ReminderMail } from '../../apps/server/src/modules/reminders/reminder-mail.ts';
import { readsOf } from '../support/arrivals.ts';
import { day } from '../support/days.ts';
import { MailCatcher } from '../support/mail-catcher.ts';
import { MovedClock } from '../support/moved-clock.ts';
import { outThere } from '../support/out-there.ts';
import { as } from '../support/people.ts';
import { readPdf } from '../support/read-pdf.ts';
import { expectUnchanged } from '../support/refused.ts';
import { ShopApp, type Visitor } from '../support/shop-app.ts';

const settings = {
  isOn: true,
  intervals: [30, 180, 90],
  senderName: 'Due dates desk',
  senderEmail: 'due@tansyhollow.example.com',
  replyTo: 'desk@tansyhollow.example.com',
  subject: 'Units that are likely to fall due',
  opening: 'We keep the due dates of what we overhauled.',
  closing: 'Tell us when it suits you.',
  reason: 'agreed in the office',
};
const tbo = 72;

/** Letters from the first proposal to the last try, with a mail server that catches them. */
describe('reminder letters', () => {
  const clock = MovedClock.inTheMorning();
  let catcher: MailCatcher;
  let shop: ShopApp;
  let desk: Visitor;
  let manager: Visitor;
  let unitIds: string[];
  const today = (offset = 0) => day(offset, clock.now());
  /** Overhauled so that its months run out in so many days. */
  const due = (days: number) => addMonths(today(days), -tbo);
  beforeAll(async () => {
    catcher = await MailCatcher.open();
    shop = await ShopApp.open('shop', { clock, smtpUrl: catcher.url });
    unitIds = await outThere(shop, [
      { serial: 'RL-85', overhauledOn: due(85) },
      { serial: 'RL-20', overhauledOn: due(20) },
      { serial: 'RL-400', overhauledOn: due(400) },
      { serial: 'RL-OVER', overhauledOn: due(-10), customer: 'FERNSIDE' },
      { serial: 'RL-CLUB', overhauledOn: due(150), customer: 'OXLIP' },
    ]);
    await signIn();
  }, 240_000);
  afterAll(async () => {
    await shop?.close();
    await catcher?.down();
  });

  const signIn = async () => {
    desk = await as(shop, 'front-desk');
    manager = await as(shop, 'manager');
  };
  const later = async (seconds: number) => {
    clock.seconds += seconds;
    if (seconds > 3_600) await signIn();
  };
  const send = () => shop.running.app.get(ReminderMail).sendDue();
  const customer = async (code: string) => readsOf(shop).customer.findUniqueOrThrow({ where: { code } });
  const proposals = async () => (await desk.call(reminderOperations.dueLetters, {})).body.rows;
  const proposalOf = async (code: string) => {
    const found = (await proposals()).find((row) => row.customer.code === code);
    if (!found) throw new Error(`nothing is due to ${code}`);
    return found;
  };
  const asked = async (code: string, way: 'e-mail' | 'paper') => {
    const { customer: to, units } = await proposalOf(code);
    return {
      customerId: to.id,
      way,
      units: units.map(({ unitId, intervalDays }) => ({ unitId, intervalDays })),
    };
  };
  const newest = async (code: string) => {
    const { id: customerId } = await customer(code);
    const [row] = (await desk.call(reminderOperations.listLetters, { customerId })).body.rows;
    if (!row) throw new Error(`no letter to ${code}`);
    return row;
  };
  const refused = (ask: () => ReturnType<Visitor['call']>, status: number, type: string) =>
    expectUnchanged(shop, ask as never, { status, type });

  it('go to nobody until the shop has set them up', async () => {
    const rows = await proposals();
    expect(rows.map(({ customer: { code }, heldBecause, ways }) => [code, heldBecause, ways])).toEqual([
      ['BRACKEN', 'Reminder letters are turned off in this shop.', []],
      ['FERNSIDE', 'Reminder letters are turned off in this shop.', []],
      ['OXLIP', 'Reminder letters are turned off in this shop.', []],
    ]);
    const letters = [await asked('BRACKEN', 'paper')];
    await refused(() => desk.call(reminderOperations.sendReminders, { letters }), 409, 'letters-held');
    const change = (who: Visitor, changes: object = {}) =>
      who.call(reminderOperations.changeReminderSettings, { ...settings, ...changes }, { version: 0 });
    await refused(() => change(desk), 403, 'not-permitted');
    await refused(() => change(manager, { intervals: [90, 90] }), 422, 'invalid-input');
    await refused(() => change(manager, { senderEmail: 'nobody' }), 422, 'invalid-input');
    expect((await change(manager)).status).toBe(200);
    await refused(() => change(manager), 412, 'out-of-date');
    const { body } = await desk.call(reminderOperations.reminderSettings, {});
    expect(body).toMatchObject({ version: 1, intervals: [180, 90, 30], printOnlyBecause: null });
  });

  it('are one a customer, with every unit that came to an interval and no other', async () => {
    const rows = await proposals();
    expect(
      rows.map(({ customer: { code }, units }) => [code, ...units.map((unit) => [unit.serial, unit.intervalDays])]),
    ).toEqual([
      ['BRACKEN', ['RL-20', 30], ['RL-85', 90]],
      ['FERNSIDE', ['RL-OVER', 30]],
      ['OXLIP', ['RL-CLUB', 180]],
    ]);
    expect(rows[1]?.units[0]).toMatchObject({ isOverdue: true, daysLeft: -10, requirement: 'recommended' });
  });

  it('say likely dates, what governs, who decides and how to get no more, as text and on paper alike', async () => {
    const { id: customerId } = await customer('BRACKEN');
    const { body } = await desk.call(reminderOperations.previewLetter, { customerId });
    expect(body.subject).toBe(settings.subject);
    for (const words of [
      ...['Q3C-76, serial RL-20', `Likely due ${today(20)}, in about 20 days`, 'The interval is recommended.'],
      ...['The current approved manual and the operator’s authority decide.', 'What governs: '],
      ...[`Write to ${settings.replyTo}, or say so by phone, and we write no more.`, 'Leda Varley'],
    ])
      expect(body.text).toContain(words);
    const response = await fetch(`${shop.address}/api/reminders/preview/${customerId}/pdf`, {
      headers: { cookie: desk.cookie },
    });
    const { text } = await readPdf(new Uint8Array(await response.arrayBuffer()));
    for (const words of ['serial RL-85', 'Preview, not sent', 'decide', 'write no more'])
      expect(text.replaceAll(/\s+/g, ' ')).toContain(words);
    const nobody = { customerId: unitIds[0] as string };
    expect((await desk.call(reminderOperations.previewLetter, nobody)).status).toBe(404);
  });

  it('are sent after commit through the mail server, and every step is on the log', async () => {
    const letters = [await asked('BRACKEN', 'e-mail')];
    const { status, body } = await desk.call(reminderOperations.sendReminders, { letters });
    expect(status).toBe(200);
    await send();
    const [mail] = catcher.caught;
    expect(catcher.caught).toHaveLength(1);
    expect(mail).toMatchObject({
      subject: settings.subject,
      messageId: `<reminder-${body.letters[0]?.id}@tansyhollow.example.com>`,
    });
    expect(mail?.from?.text).toContain(settings.senderEmail);
    expect(mail?.replyTo?.text).toBe(settings.replyTo);
    expect([mail?.to].flat()[0]?.text).toContain('maintenance@brackenmoor.example.com');
    expect(mail?.text).toContain('serial RL-85');
    const pdf = await readPdf(new Uint8Array(mail?.attachments[0]?.content as Buffer));
    expect(pdf.text).toContain(body.letters[0]?.number);
    const letter = await newest('BRACKEN');
    expect(letter).toMatchObject({ state: 'sent', tries: 1, to: { email: 'maintenance@brackenmoor.example.com' } });
    expect(letter.events.map(({ what, by }) => [what, by])).toEqual([
      ['made', letter.by],
      ['tried', 'the server'],
      ['sent', 'the server'],
    ]);
  });

  it('tell of no unit twice at an interval, whoever asks again', async () => {
    expect((await proposals()).map(({ customer: { code } }) => code)).toEqual(['FERNSIDE', 'OXLIP']);
    const { id: customerId } = await customer('BRACKEN');
    const units = [{ unitId: unitIds[0] as string, intervalDays: 90 }];
    const again = { letters: [{ customerId, way: 'e-mail' as const, units }] };
    await refused(() => desk.call(reminderOperations.sendReminders, again), 409, 'letter-changed');
    await send();
    expect(catcher.caught).toHaveLength(1);
  });

  it('are written once when two people press at the same moment', async () => {
    const letters = [await asked('FERNSIDE', 'paper')];
    const answers = await Promise.all(
      [desk, manager].map((who) => who.call(reminderOperations.sendReminders, { letters })),
    );
    expect(answers.map(({ status }) => status).toSorted()).toEqual([200, 409]);
  });

  it('go by post where a person prints them, says when, and cannot say so twice', async () => {
    const letter = await newest('FERNSIDE');
    expect(letter).toMatchObject({ way: 'paper', state: 'to-post', sentAt: null });
    const posted = { letterId: letter.id, postedOn: today() };
    const tomorrow = { ...posted, postedOn: today(1) };
    const mark = (input: typeof posted, version = letter.version) =>
      desk.call(reminderOperations.markLetterPosted, input, { version });
    await refused(() => mark(tomorrow), 422, 'invalid-input');
    expect((await mark(posted)).status).toBe(200);
    await refused(() => mark(posted, letter.version + 1), 409, 'letter-done');
    expect(await newest('FERNSIDE')).toMatchObject({ state: 'posted', outcome: `Posted on ${today()}.` });
  });

  it('stop for good at an address that is refused, and go to the new one when somebody has put it right', async () => {
    catcher.unknown.add('secretary@oxlip.example.com');
    await desk.call(reminderOperations.sendReminders, { letters: [await asked('OXLIP', 'e-mail')] });
    await send();
    const failed = await newest('OXLIP');
    expect(failed).toMatchObject({ state: 'failed', tries: 1, nextTryAt: null });
    expect(failed.outcome).toContain('nobody of that name');
    expect(failed.outcome).not.toContain('secretary@');
    const oxlip = await customer('OXLIP');
    const { id: customerId, version, code: _, ...details } = oxlip;
    const changed = { ...details, customerId, email: 'hangar@oxlip.example.com' } as never;
    expect((await desk.call(customerOperations.changeCustomer, changed, { version })).status).toBe(200);
    const resumed = await desk.call(
      reminderOperations.resumeLetter,
      { letterId: failed.id, way: 'e-mail' },
      { version: failed.version },
    );
    expect(resumed.status).toBe(200);
    await send();
    expect([catcher.caught.at(-1)?.to].flat()[0]?.text).toContain('hangar@oxlip.example.com');
    expect(await newest('OXLIP')).toMatchObject({ state: 'sent', to: { email: 'hangar@oxlip.example.com' } });
  });

  it('come again at the next interval, and only with what came to it', async () => {
    await later(56 * 86_400);
    expect((await proposalOf('BRACKEN')).units).toMatchObject([{ serial: 'RL-85', intervalDays: 30, daysLeft: 29 }]);
  });

  it('wait longer and longer while the mail server is down, and go once when it is up', async () => {
    await catcher.down();
    const before = catcher.caught.length;
    await desk.call(reminderOperations.sendReminders, { letters: [await asked('BRACKEN', 'e-mail')] });
    await send();
    expect(await newest('BRACKEN')).toMatchObject({ state: 'waiting', tries: 1 });
    await send();
    expect(await newest('BRACKEN')).toMatchObject({ tries: 1 });
    await later(61);
    await send();
    const waiting = await newest('BRACKEN');
    expect(waiting).toMatchObject({ state: 'waiting', tries: 2 });
    expect(Date.parse(waiting.nextTryAt ?? '') - clock.now().getTime()).toBeGreaterThan(4 * 60_000);
    await catcher.up();
    await later(6 * 60);
    await send();
    await send();
    expect(catcher.caught).toHaveLength(before + 1);
    const sent = await newest('BRACKEN');
    expect(sent).toMatchObject({ state: 'sent', tries: 3, nextTryAt: null });
    expect(sent.events.map(({ what }) => what)).toEqual([
      ...['made', 'tried', 'not reached', 'tried', 'not reached', 'tried', 'sent'],
    ]);
  });

  it('are given up after the last try, and a person may print what could not be sent', async () => {
    await later(70 * 86_400);
    await catcher.down();
    await desk.call(reminderOperations.sendReminders, { letters: [await asked('OXLIP', 'e-mail')] });
    for (const seconds of [0, 61, 301, 901, 3_601, 14_401, 43_201, 86_401, 86_401]) {
      clock.seconds += seconds;
      await send();
    }
    await signIn();
    const failed = await newest('OXLIP');
    expect(failed).toMatchObject({ state: 'failed', tries: 9 });
    expect(failed.events.at(-1)).toMatchObject({ what: 'given up' });
    await desk.call(
      reminderOperations.resumeLetter,
      { letterId: failed.id, way: 'paper' },
      { version: failed.version },
    );
    expect(await newest('OXLIP')).toMatchObject({ state: 'to-post' });
    await catcher.up();
  });

  it('respect a customer who wants none: what waits is withdrawn, nothing is proposed to be sent, and it can be changed back', async () => {
    const { id: customerId } = await customer('OXLIP');
    const choose = (wantsLetters: boolean, version: number, saidOn = today()) =>
      desk.call(
        reminderOperations.setReminderChoice,
        { customerId, wantsLetters, saidOn, reason: 'by phone' },
        { version },
      );
    await refused(() => choose(false, 0, today(1)), 422, 'invalid-input');
    expect((await choose(false, 0)).status).toBe(200);
    await refused(() => choose(true, 0), 412, 'out-of-date');
    expect(await newest('OXLIP')).toMatchObject({ state: 'withdrawn', outcome: 'The customer asked for no letters.' });
    const held = await proposalOf('OXLIP');
    expect(held).toMatchObject({ ways: [], heldBecause: expect.stringContaining(`asked on ${today()}`) });
    const units = held.units.map(({ unitId, intervalDays }) => ({ unitId, intervalDays }));
    const letters = [{ customerId, way: 'paper' as const, units }];
    await refused(() => desk.call(reminderOperations.sendReminders, { letters }), 409, 'letters-held');
    const { body } = await desk.call(reminderOperations.reminderChoice, { customerId });
    expect(body).toMatchObject({ wantsLetters: false, version: 1, said: [{ reason: 'by phone', saidOn: today() }] });
    expect((await choose(true, 1)).status).toBe(200);
    expect(await proposalOf('OXLIP')).toMatchObject({ heldBecause: null });
  });

  it('asked for while one lies in the outbox, stop it there too', async () => {
    await catcher.down();
    const before = catcher.caught.length;
    await desk.call(reminderOperations.sendReminders, { letters: [await asked('OXLIP', 'e-mail')] });
    await send();
    const { id: customerId } = await customer('OXLIP');
    const choice = { customerId, wantsLetters: false, saidOn: today(), reason: 'by letter' };
    await desk.call(reminderOperations.setReminderChoice, choice, { version: 2 });
    await catcher.up();
    await later(600);
    await send();
    expect(catcher.caught).toHaveLength(before);
    expect(await newest('OXLIP')).toMatchObject({ state: 'withdrawn' });
  });

  it('taken back are proposed again', async () => {
    await later(100 * 86_400);
    const letters = [await asked('BRACKEN', 'paper')];
    const [seen] = (await desk.call(reminderOperations.sendReminders, { letters })).body.letters;
    expect((await proposals()).map(({ customer: { code } }) => code)).not.toContain('BRACKEN');
    const input = { letterId: seen?.id ?? '', reason: 'wrong paper' };
    expect((await desk.call(reminderOperations.withdrawLetter, input, { version: 1 })).status).toBe(200);
    await refused(() => desk.call(reminderOperations.withdrawLetter, input, { version: 2 }), 409, 'letter-done');
    expect((await proposalOf('BRACKEN')).units).toMatchObject([{ serial: 'RL-400', intervalDays: 180 }]);
  });
});

/** A server that is told of no mail server. */
describe('without a mail server', () => {
  let shop: ShopApp;
  beforeAll(async () => {
    shop = await ShopApp.open('shop');
    await outThere(shop, [{ serial: 'RP-1', overhauledOn: addMonths(day(20), -tbo) }]);
  }, 120_000);
  afterAll(() => shop.close());

  it('letters can only be printed, and the server says so', async () => {
    const [desk, manager] = [await as(shop, 'front-desk'), await as(shop, 'manager')];
    await manager.call(reminderOperations.changeReminderSettings, settings, { version: 0 });
    const { body } = await desk.call(reminderOperations.dueLetters, {});
    expect(body).toMatchObject({
      printOnlyBecause: expect.stringContaining('SMTP_URL'),
      rows: [{ ways: ['paper'], heldBecause: null }],
    });
    const [row] = body.rows;
    const units = row?.units.map(({ unitId, intervalDays }) => ({ unitId, intervalDays })) ?? [];
    const ask = (way: 'e-mail' | 'paper') =>
      desk.call(reminderOperations.sendReminders, { letters: [{ customerId: row?.customer.id ?? '', way, units }] });
    await expectUnchanged(shop, () => ask('e-mail'), { status: 409, type: 'cannot-mail' });
    expect((await ask('paper')).status).toBe(200);
  });
});
