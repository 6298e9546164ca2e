import { accessOperations } from '@hubwright/contracts/people/access-operations';
import { peopleOperations } from '@hubwright/contracts/people/operations';
import { workingTimeOperations } from '@hubwright/contracts/people/working-time-operations';
import { recordOperations } from '@hubwright/contracts/records/operations';
import { addDays } from '@hubwright/rules/dates';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import pg from 'pg';
import { demoPassword, newPerson } from '../../../../../tests/support/builders.ts';
import { day } from '../../../../../tests/support/days.ts';
import { as } from '../../../../../tests/support/people.ts';
import { expectRefused } from '../../../../../tests/support/refused.ts';
import { ShopApp, type Visitor } from '../../../../../tests/support/shop-app.ts';
import { verifyDatabase } from '../../platform/records/verify-database.ts';

const { addShiftPattern, assignShifts, takeBackShifts, retireShiftPattern } = workingTimeOperations;
const { addHoliday, removeHoliday, enterAbsence, cancelAbsence, absencesOf, presence, workingWeek } =
  workingTimeOperations;
const shift = { from: '08:00', to: '16:30', breaks: [{ from: '12:00', to: '12:30' }] };
const week = [[shift], [shift], [shift], [shift], [shift], [], []];
// A week far from the demonstration's own absences and holiday.
const monday = addDays(day(100), -((new Date(`${day(100)}T00:00:00Z`).getUTCDay() + 6) % 7));

describe('working time', () => {
  let shop: ShopApp;
  let manager: Visitor;
  let personId: string;
  let patternId: string;
  let sql: pg.Client;
  beforeAll(async () => {
    shop = await ShopApp.open('shop');
    sql = new pg.Client({ connectionString: shop.databaseUrl });
    await sql.connect();
    manager = await as(shop, 'manager');
    const person = { signInName: 'isolde', displayName: 'Isolde Reedham', initials: 'IR' };
    personId = (await newPerson(shop, { ...person, roles: ['technician'] })).personId;
  }, 120_000);
  afterAll(async () => {
    await sql.end();
    await shop.close();
  });

  const refuse = (sent: Parameters<typeof expectRefused>[1], status: number, type: string) =>
    expectRefused({ shop, visitor: manager }, sent, { status, type });
  const daysOf = async () => {
    const { body } = await manager.call(presence, { week: addDays(monday, 3) });
    expect(body.monday).toBe(monday);
    return body.rows.find((row) => row.personId === personId)?.days ?? [];
  };
  const minutes = async () => (await daysOf()).map(({ availableMinutes }) => availableMinutes);
  const away = (more: object = {}) => ({
    operation: enterAbsence,
    input: { personId, kind: 'sick' as const, from: addDays(monday, 1), to: addDays(monday, 1), ...more },
  });

  it('goes by the shop’s shifts until a person has their own', async () => {
    const before = await daysOf();
    expect(before.slice(0, 6).map(({ plannedMinutes }) => plannedMinutes)).toEqual([480, 480, 480, 480, 480, 0]);
    expect(before[0]).toMatchObject({ from: '07:30', to: '16:00' });
    const added = await manager.call(addShiftPattern, { name: 'Ordinary', week });
    expect(added.status).toBe(200);
    patternId = added.body.id;
    const validFrom = addDays(monday, 2);
    expect((await manager.call(assignShifts, { personId, patternId, validFrom })).status).toBe(200);
    expect((await daysOf()).slice(0, 4).map(({ from }) => from)).toEqual(['07:30', '07:30', '08:00', '08:00']);
    await refuse({ operation: assignShifts, input: { personId, patternId, validFrom } }, 409, 'shifts-assigned');
    const { body } = await manager.call(absencesOf, { personId });
    expect(body.shifts).toMatchObject([{ pattern: 'Ordinary', validFrom }]);
    const [own] = body.shifts;
    await manager.call(takeBackShifts, { assignmentId: own?.id ?? '', reason: 'meant another' });
    expect((await daysOf())[2]?.from).toBe('07:30');
  });

  it('takes no shifts that cannot be worked, and no pattern twice', async () => {
    const broken = (monday: object[]) => ({ name: 'Broken', week: [monday, [], [], [], [], [], []] as typeof week });
    const wrong = { ...shift, breaks: [{ from: '17:00', to: '17:30' }] };
    await refuse({ operation: addShiftPattern, input: broken([wrong]) }, 422, 'shifts-wrong');
    await refuse({ operation: addShiftPattern, input: broken([shift, shift]) }, 422, 'shifts-wrong');
    await refuse({ operation: addShiftPattern, input: broken([]) }, 422, 'shifts-wrong');
    await refuse({ operation: addShiftPattern, input: broken([{ ...shift, from: '25:00' }]) }, 422, 'invalid-input');
    await refuse({ operation: addShiftPattern, input: { name: 'Ordinary', week } }, 409, 'pattern-named');
    const retire = { patternId, reason: 'nobody works it' };
    expect((await manager.call(retireShiftPattern, retire, { version: 1 })).status).toBe(200);
    await refuse(
      { operation: assignShifts, input: { personId, patternId, validFrom: monday } },
      409,
      'pattern-retired',
    );
    const kept = (await manager.call(workingWeek, {})).body.patterns.find(({ id }) => id === patternId);
    expect(kept).toMatchObject({ minutesAWeek: 2400, retiredOn: day(0) });
  });

  it('takes holidays of the shop away, whole or half, each day once', async () => {
    const holiday = { on: monday, part: 'afternoon' as const, name: 'Fair' };
    const added = await manager.call(addHoliday, holiday);
    expect(added.status).toBe(200);
    expect((await minutes())[0]).toBe(240);
    await refuse({ operation: addHoliday, input: { ...holiday, part: 'whole' as const } }, 409, 'holiday-there');
    await manager.call(removeHoliday, { holidayId: added.body.id, reason: 'moved to June' });
    expect((await minutes())[0]).toBe(480);
  });

  it('takes absences away by halves of days, and none over another', async () => {
    const entered = await manager.call(
      enterAbsence,
      away({ fromHalf: 'afternoon', to: addDays(monday, 2), note: 'a tooth' }).input,
    );
    expect(entered.status).toBe(200);
    expect((await minutes()).slice(0, 4)).toEqual([480, 240, 0, 480]);
    expect((await daysOf())[1]).toMatchObject({ absence: 'sick', from: '07:30' });
    await refuse(away(), 409, 'absence-overlaps');
    await refuse(away({ from: addDays(monday, 2), to: addDays(monday, 9), kind: 'holiday' }), 409, 'absence-overlaps');
    await refuse(away({ from: addDays(monday, 4), to: addDays(monday, 3) }), 422, 'absence-backwards');
    await refuse(
      away({ from: monday, to: monday, fromHalf: 'afternoon', toHalf: 'morning' }),
      422,
      'absence-backwards',
    );
    await refuse(away({ from: '2026-02-30' }), 422, 'invalid-input');
    expect((await manager.call(enterAbsence, away({ toHalf: 'morning', kind: 'training' }).input)).status).toBe(200);
    const cancel = { absenceId: entered.body.id, reason: 'came after all' };
    await refuse({ operation: cancelAbsence, input: cancel, options: { version: 9 } }, 412, 'out-of-date');
    expect((await manager.call(cancelAbsence, cancel, { version: 1 })).status).toBe(200);
    await refuse({ operation: cancelAbsence, input: cancel, options: { version: 2 } }, 409, 'absence-cancelled');
    expect((await minutes()).slice(0, 4)).toEqual([480, 240, 480, 480]);
  });

  it('two who enter the same absence at once do not both succeed', async () => {
    const span = away({ from: addDays(monday, 4), to: addDays(monday, 4) }).input;
    const answers = await Promise.all([manager.call(enterAbsence, span), manager.call(enterAbsence, span)]);
    expect(answers.map(({ status }) => status).sort()).toEqual([200, 409]);
  });

  it('is nobody’s business but the leaders’; why someone was away never stands in the chain and is erased with them', async () => {
    for (const who of ['technician', 'inspector', 'front-desk'] as const) {
      const visitor = await as(shop, who);
      expect((await visitor.call(presence, {})).status).toBe(403);
      expect((await visitor.call(absencesOf, { personId })).status).toBe(403);
    }
    const { rows } = await sql.query("SELECT body FROM record_entries WHERE command = 'enter-absence'");
    expect(rows.length).toBeGreaterThan(0);
    for (const { body } of rows) expect(body).not.toMatch(/a tooth|"sick"|"training"/);
    const administrator = await as(shop, 'administrator');
    const people = (await administrator.call(peopleOperations.listPeople, {})).body.rows;
    const version = people.find(({ id }) => id === personId)?.version ?? 0;
    await administrator.call(accessOperations.endPerson, { personId, reason: 'moved away' }, { version });
    await refuse(away({ from: addDays(monday, 3), to: addDays(monday, 3) }), 409, 'has-left');
    const erased = await administrator.call(recordOperations.erasePerson, {
      personId,
      reason: 'asked for it',
      signature: { password: demoPassword },
    });
    expect(erased.status).toBe(200);
    const left = await sql.query('SELECT DISTINCT kind, note FROM absences WHERE person_id = $1', [personId]);
    expect(left.rows).toEqual([{ kind: 'other', note: '' }]);
    expect((await verifyDatabase(shop.databaseUrl)).faults).toEqual([]);
  });
});
