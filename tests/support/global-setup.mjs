import { startTestCluster } from './cluster.mjs';

/** Called once per project that needs PostgreSQL: the first call starts it, the others find it running. */
export default async function setUp() {
  if (process.env.HUBWRIGHT_TEST_TEMPLATE) return;
  const cluster = await startTestCluster();
  process.env.HUBWRIGHT_TEST_TEMPLATE = cluster.url;
  globalThis.stopTestCluster = cluster.stop;
  for (const signal of ['SIGINT', 'SIGTERM']) {
    process.once(signal, () => cluster.stop().finally(() => process.exit(130)));
  }
}
