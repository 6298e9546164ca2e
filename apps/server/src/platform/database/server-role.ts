import type pg from 'pg';

/** The role the running server works as. It owns no table, so it cannot take the guards off. */
export const serverRole = 'hubwright_server';

/** The same connection, working as the server's role from its first statement on. */
export function asServer(url: string): string {
  const address = new URL(url);
  const options = [address.searchParams.get('options'), `-c role=${serverRole}`].filter(Boolean).join(' ');
  address.searchParams.set('options', options);
  return address.href;
}

/**
 * Roles belong to the whole cluster: another database's start may make this one at the same moment. The account that
 * migrates must be able to become it, since the server connects with that account and the start-up option `role`.
 */
export async function ensureServerRole(client: pg.Client): Promise<void> {
  const { rowCount } = await client.query('SELECT 1 FROM pg_roles WHERE rolname = $1', [serverRole]);
  if (!rowCount) {
    await client.query(`CREATE ROLE ${serverRole} NOLOGIN`).catch((error: pg.DatabaseError) => {
      if (error.code !== '42710' && error.code !== '23505') throw error; // duplicate_object, unique_violation
    });
  }
  await client.query(`DO $$ BEGIN
    IF NOT pg_has_role(current_user, '${serverRole}', 'MEMBER') THEN GRANT ${serverRole} TO CURRENT_USER; END IF;
  END $$`);
}
