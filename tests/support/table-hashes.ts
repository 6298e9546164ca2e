import pg from 'pg';

// What a refusal may write, what a session does, what the server's own jobs write by the clock, and what nothing of the
// shop's depends on.
const beside = [
  'refusals',
  'session',
  'sign_in_attempts',
  'anchors',
  'anchored_heads',
  'shop_keys',
  '_prisma_migrations',
];

/** A hash of every row of every table but those a refused request may touch: equal hashes mean nothing was changed. */
export async function tableHashes(databaseUrl: string): Promise<Record<string, string>> {
  const client = new pg.Client({ connectionString: databaseUrl });
  await client.connect();
  try {
    const { rows } = await client.query<{ name: string }>(
      "SELECT tablename AS name FROM pg_tables WHERE schemaname = 'public' AND tablename <> ALL ($1) ORDER BY 1",
      [beside],
    );
    const hashes: Record<string, string> = {};
    for (const { name } of rows) {
      const result = await client.query<{ hash: string }>(
        `SELECT md5(coalesce(string_agg(r::text, '|' ORDER BY r::text), '')) AS hash FROM ${client.escapeIdentifier(name)} r`,
      );
      hashes[name] = result.rows[0]?.hash ?? '';
    }
    return hashes;
  } finally {
    await client.end();
  }
}
