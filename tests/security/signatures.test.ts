import { randomUUID } from 'node:crypto';
import { accessOperations } from '@hubwright/contracts/people/access-operations';
import { peopleOperations } from '@hubwright/contracts/people/operations';
import { allOperations } from '@hubwright/contracts/routes';
import { travelerOperations } from '@hubwright/contracts/work-orders/traveler-operations';
import { afterAll, beforeAll, describe, expect, it } from '@jest/globals';
import pg from 'pg';
import { addPerson } from '../../apps/server/src/modules/people/add-person.command.ts';
import { grantAuthorisation } from '../../apps/server/src/modules/people/grant-authorisation.command.ts';
import { issueBadge } from '../../apps/server/src/modules/people/issue-badge.command.ts';
import { contentHashOf } from '../../apps/server/src/modules/people/public.ts';
import { verifyDatabase } from '../../apps/server/src/platform/records/verify-database.ts';
import { demoPassword, firstPassword } from '../../seed/data/people.ts';
import { day } from '../support/days.ts';
import { Job } from '../support/job.ts';
import { actorOf, as, pin } from '../support/people.ts';
import { ShopApp, type Visitor } from '../support/shop-app.ts';

const { signStep } = travelerOperations;
const today = day(0);

// The properties that FAA AC 120-78B asks of an electronic signature, in our words and order.
describe('a signature', () => {
  let shop: ShopApp;
  let job: Job;
  let sql: pg.Client;
  let technician: Visitor;
  let administrator: Visitor;
  let admin: Awaited<ReturnType<typeof actorOf>>;
  beforeAll(async () => {
    shop = await ShopApp.open('shop');
    job = await Job.arrived(shop, '8801');
    await job.tornDown();
    sql = new pg.Client({ connectionString: shop.databaseUrl });
    await sql.connect();
    technician = await as(shop, 'technician');
    administrator = await as(shop, 'administrator');
    admin = await actorOf(shop, 'administrator');
  }, 120_000);
  afterAll(async () => {
    await sql.end();
    await shop.close();
  });

  /** A step the technician may sign, and what signing it sends. */
  async function nextEntry() {
    const step = (await job.nextSteps()).find(({ level }) => level === 'perform');
    if (!step) throw new Error('The technician has nothing left to sign');
    return job.entryFor(step);
  }
  async function signed() {
    const entry = await nextEntry();
    const answer = await technician.call(signStep, entry);
    expect(answer.status).toBe(200);
    const { rows } = await sql.query('SELECT * FROM sign_offs WHERE step_id = $1', [entry.stepId]);
    const { rows: entries } = await sql.query('SELECT body FROM record_entries WHERE id = $1', [rows[0].entry_id]);
    return { entry, row: rows[0], record: JSON.parse(entries[0].body) };
  }
  async function newcomer(signInName: string) {
    const person = { signInName, displayName: 'Perpetua Gandy', initials: 'PG', roles: ['technician' as const] };
    return shop.run(addPerson, { ...person, password: firstPassword }, admin);
  }

  it('is unique to one person: a sign-in name is never given to another, not even after a departure or an erasure', async () => {
    const { id } = await newcomer('perpetua');
    const again = () =>
      administrator.call(peopleOperations.addPerson, {
        ...{ signInName: 'Perpetua', displayName: 'Somebody Else', initials: 'SE' },
        ...{ roles: ['technician'], password: firstPassword },
      });
    const ended = await administrator.call(
      accessOperations.endPerson,
      { personId: id, reason: 'moved away' },
      { version: 1 },
    );
    expect(ended.status).toBe(200);
    expect((await again()).body).toMatchObject({
      type: '/problems/name-used-before',
      errors: [{ pointer: '/signInName' }],
    });
    await sql.query("UPDATE people SET sign_in_name = 'erased-1', display_name = 'erased' WHERE id = $1", [id]);
    expect((await again()).body.type).toBe('/problems/name-used-before');
    await expect(sql.query('DELETE FROM given_names')).rejects.toThrow(/only added/);
  });

  it('is unique to one person: a badge once revoked is never anyone’s again', async () => {
    const { id } = await newcomer('clemency');
    await shop.run(issueBadge, { personId: id }, admin);
    const first = await administrator.call(accessOperations.badgeToPrint, { personId: id });
    await shop.run(issueBadge, { personId: id }, admin);
    const second = await administrator.call(accessOperations.badgeToPrint, { personId: id });
    expect(first.body.code).toMatch(/^HB-[0-9A-Z]{13}$/);
    expect(second.body.code).not.toBe(first.body.code);
    const { rows } = await sql.query('SELECT revoked_at FROM badges WHERE code = $1', [first.body.code]);
    expect(rows[0].revoked_at).toBeInstanceOf(Date);
    const other = 'INSERT INTO badges (code, person_id, issued_at) VALUES ($1, $2, now())';
    await expect(sql.query(other, [first.body.code, admin.personId])).rejects.toMatchObject({ code: '23505' });
    const { rows: bodies } = await sql.query("SELECT body FROM record_entries WHERE command = 'issue-badge'");
    expect(bodies.some(({ body }) => body.includes(first.body.code))).toBe(false);
  });

  it('is under its person’s sole control: nothing is done or signed with a password somebody else gave', async () => {
    const { id } = await newcomer('hesper');
    const grant = { personId: id, process: 'teardown' as const, level: 'perform' as const, validFrom: today };
    await shop.run(grantAuthorisation, grant, admin);
    const visitor = shop.visitor();
    const signIn = await visitor.call(peopleOperations.signIn, { signInName: 'hesper', password: firstPassword });
    expect(signIn.body).toMatchObject({ due: 'own-password', hasPin: false });
    const entry = { ...(await nextEntry()), signature: { password: firstPassword } };
    expect((await visitor.call(signStep, entry)).body.type).toBe('/problems/own-password-due');
    const same = { password: firstPassword, newPassword: firstPassword };
    expect((await visitor.call(accessOperations.chooseOwnPassword, same)).body.type).toBe('/problems/weak-password');
    const own = { password: firstPassword, newPassword: 'a heron stands by the weir', pin: '8642' };
    expect((await visitor.call(accessOperations.chooseOwnPassword, own)).status).toBe(200);
    expect((await visitor.call(peopleOperations.me, {})).body).toMatchObject({ due: null, hasPin: true });
    const reset = { personId: id, password: firstPassword, reason: 'forgotten' };
    expect((await administrator.call(accessOperations.resetPassword, reset)).status).toBe(200);
    expect((await visitor.call(peopleOperations.me, {})).status).toBe(401);
  });

  it('is a deliberate act: every signed operation says what it states and takes no request without the secret', () => {
    const signing = allOperations.filter((operation) => operation.signs !== undefined);
    expect(signing.length).toBeGreaterThan(12);
    for (const { id, signs, input, secret } of signing) {
      expect({ id, signs }).toEqual({ id, signs: expect.stringMatching(/^.{20,}/) });
      expect(secret).toContain('signature');
      expect({ id, demands: input.shape.signature?.safeParse(undefined).success }).toEqual({ id, demands: false });
    }
  });

  it('has intent and scope: meaning, content, person, day of signing and day of work stand in the record', async () => {
    const { entry, row, record } = await signed();
    expect(record.signed).toMatchObject({ meaning: signStep.signs, by: 'pin' });
    expect(row.meaning).toBe(signStep.signs);
    expect(JSON.parse(row.content)).toMatchObject({ step: expect.anything() });
    expect(record.who.person).toBe(row.person_id);
    expect(record.at).toBe(row.signed_at.toISOString());
    const dated = await technician.call(signStep, {
      ...(await nextEntry()),
      signedAt: '2020-01-01T00:00:00Z',
    } as never);
    expect(dated.body).toMatchObject({ type: '/problems/invalid-input', errors: [{ pointer: '/signedAt' }] });
    expect(JSON.stringify(record)).not.toContain(JSON.stringify(entry.signature));
  });

  it('is bound to its content: a changed content, or content and hash, is named by the verification', async () => {
    const { row, record } = await signed();
    expect(row.content_hash).toBe(contentHashOf(JSON.parse(row.content)));
    expect(record.signed.signOffs).toEqual([{ id: row.id, contentHash: row.content_hash }]);
    expect((await verifyDatabase(shop.databaseUrl)).faults).toEqual([]);
    const spoil = async (content: string, hash: string) => {
      await sql.query('BEGIN');
      await sql.query('SET LOCAL session_replication_role = replica');
      await sql.query('UPDATE sign_offs SET content = $2, content_hash = $3 WHERE id = $1', [row.id, content, hash]);
      await sql.query('COMMIT');
      return (await verifyDatabase(shop.databaseUrl)).faults;
    };
    const forged = row.content.replace('{', '{"added":true,');
    const place = `signature ${row.id}`;
    expect(await spoil(forged, row.content_hash)).toEqual([
      { place, reason: 'what was signed is not what its hash says' },
    ]);
    expect(await spoil(forged, contentHashOf(JSON.parse(forged)))).toEqual([
      { place, reason: 'the record entry names another content' },
    ]);
    expect(await spoil(row.content, row.content_hash)).toEqual([]);
  });

  it('carries the authorisation as it was: ending it later changes nothing, and ends it for the next signature', async () => {
    const { row, record } = await signed();
    const { id } = row.authorisation;
    expect(record.who.authorisation).toEqual(row.authorisation);
    // The form is open; the authorisation ends before the signature comes.
    const { entry } = { entry: await nextEntry() };
    const step = await job.reads.travelerStep.findUniqueOrThrow({ where: { id: entry.stepId } });
    const held = await job.reads.authorisation.findMany({
      where: { personId: job.people.technician.personId, process: step.process, level: step.level, revokedOn: null },
    });
    for (const { id: authorisationId } of held) {
      const revoke = { authorisationId, reason: 'medical lapsed' };
      expect((await administrator.call(peopleOperations.revokeAuthorisation, revoke)).status).toBe(200);
    }
    const refused = await technician.call(signStep, entry);
    expect(refused.body).toMatchObject({ type: '/problems/not-authorised', process: step.process });
    const { rows } = await sql.query('SELECT authorisation FROM sign_offs WHERE id = $1', [row.id]);
    expect(rows[0].authorisation).toEqual(row.authorisation);
    const personId = job.people.technician.personId;
    const grant = { personId, process: step.process as never, level: step.level as never, validFrom: today };
    await shop.run(grantAuthorisation, grant, admin);
    expect((await technician.call(signStep, entry)).status).toBe(200);
    expect(id).toMatch(/^[0-9a-f-]{36}$/);
  });

  it('is traceable: found by person and by what it is about, page by page, by those who look after records', async () => {
    const { row } = await signed();
    const inspector = await as(shop, 'inspector');
    const { personId } = job.people.technician;
    const first = await inspector.call(accessOperations.listSignatures, { personId, limit: 1 });
    expect(first.body.rows).toMatchObject([{ personId, meaning: signStep.signs, contentHashes: [row.content_hash] }]);
    const second = await inspector.call(accessOperations.listSignatures, {
      personId,
      limit: 1,
      after: first.body.next ?? '',
    });
    expect(second.body.rows[0]?.entryId).not.toBe(first.body.rows[0]?.entryId);
    const [about] = first.body.rows[0]?.subjects ?? [];
    const subject = { subjectKind: about?.kind, subjectId: about?.id };
    const bySubject = await inspector.call(accessOperations.listSignatures, subject as never);
    expect(bySubject.body.rows.map(({ entryId }) => entryId)).toContain(first.body.rows[0]?.entryId);
    expect((await technician.call(accessOperations.listSignatures, { personId })).status).toBe(403);
  });

  it('cannot be repudiated: its entry stands in the chain of what it is about', async () => {
    const { row, record } = await signed();
    const { rows } = await sql.query('SELECT subject_kind, subject_id FROM record_links WHERE entry_id = $1', [
      row.entry_id,
    ]);
    expect(rows).toHaveLength(record.subjects.length);
    await expect(sql.query('DELETE FROM sign_offs WHERE id = $1', [row.id])).rejects.toThrow(/only added/);
    await expect(sql.query('UPDATE record_entries SET body = body')).rejects.toThrow(/only added/);
  });

  it('is never delegated: not with another’s PIN, not in another’s session, not under a shared account', async () => {
    const { id } = await newcomer('lettice');
    const other = shop.visitor();
    await other.call(peopleOperations.signIn, { signInName: 'lettice', password: firstPassword });
    const own = { password: firstPassword, newPassword: 'three geese over the hangar', pin: '9753' };
    await other.call(accessOperations.chooseOwnPassword, own);
    const entry = await nextEntry();
    const theirs = await technician.call(signStep, { ...entry, signature: { pin: '9753' } });
    expect(theirs.body.type).toBe('/problems/signature-refused');
    // The page asked the technician; someone with the right role took over the device meanwhile.
    const signature = { ...pin, signer: id };
    expect((await technician.call(signStep, { ...entry, signature })).body.type).toBe('/problems/signature-refused');
    for (const displayName of ['Bench 2', 'Night shift', 'The technicians', 'Shop floor'])
      expect(
        (
          await administrator.call(peopleOperations.addPerson, {
            ...{ signInName: 'bench-2', displayName, initials: 'B2', roles: ['technician'], password: firstPassword },
          })
        ).body,
      ).toMatchObject({ type: '/problems/shared-account', errors: [{ pointer: '/displayName' }] });
  });

  it('replayed with its key answers the same and signs once; with another key, or from another session, it is refused', async () => {
    const entry = await nextEntry();
    const key = randomUUID();
    const first = await technician.call(signStep, entry, { key });
    expect(first.status).toBe(200);
    expect(await technician.call(signStep, entry, { key })).toMatchObject({ status: 200, body: first.body });
    const again = await technician.call(signStep, entry);
    expect({ status: again.status, signs: again.body.type !== undefined }).toEqual({ status: 409, signs: true });
    const inspector = await as(shop, 'inspector');
    const captured = { ...entry, signature: { ...pin, signer: job.people.technician.personId } };
    expect((await inspector.call(signStep, captured, { key })).body.type).toBe('/problems/signature-refused');
    expect((await shop.visitor().call(signStep, captured, { key })).status).toBe(401);
    const { rows } = await sql.query('SELECT person_id FROM sign_offs WHERE step_id = $1', [entry.stepId]);
    expect(rows).toEqual([{ person_id: job.people.technician.personId }]);
  });

  it('by PIN is locked after five wrong ones, until the person signs in fully; the password still signs', async () => {
    const entry = await nextEntry();
    const tries = [];
    for (const wrong of ['1357', '1358', '1359', '1360', '1361'])
      tries.push((await technician.call(signStep, { ...entry, signature: { pin: wrong } })).body.type);
    expect(new Set(tries)).toEqual(new Set(['/problems/signature-refused']));
    expect((await technician.call(signStep, entry)).body.type).toBe('/problems/pin-locked');
    const byPassword = { ...entry, signature: { password: demoPassword } };
    expect((await technician.call(signStep, byPassword)).status).toBe(200);
    const next = await nextEntry();
    expect((await technician.call(signStep, next)).body.type).toBe('/problems/pin-locked');
    technician = await as(shop, 'technician');
    expect((await technician.call(signStep, next)).status).toBe(200);
  });
});
