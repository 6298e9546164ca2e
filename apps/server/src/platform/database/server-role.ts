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

/** The role that destroys records whose time has run. The running server is not a member. */
const retentionRole = 'hubwright_retention';

/**
 * Roles belong to the whole cluster: another database's start may make one at the same moment. The account that migrates must
 * be able to become them, since the server connects with that account and the start-up option `role`.
 */
export async function ensureRoles(client: pg.Client): Promise<void> {
  for (const role of [serverRole, retentionRole]) await ensureRole(client, role);
}

async function ensureRole(client: pg.Client, role: string): Promise<void> {
  const { rowCount } = await client.query('SELECT 1 FROM pg_roles WHERE rolname = $1', [role]);
  if (!rowCount) {
    await client.query(`CREATE ROLE ${role} NOLOGIN`).catch((error: pg.DatabaseError) => {
      if (error.code !== '42710' && error.code !== '23505') throw error; // duplicate_object, unique_violation
    });
  }
  await client.query(`DO $$ BEGIN
    IF NOT pg_has_role(current_user, '${role}', 'MEMBER') THEN GRANT ${role} TO CURRENT_USER; END IF;
  END $$`);
}
