export default async function tearDown() {
  await globalThis.stopTestCluster?.();
  globalThis.stopTestCluster = undefined;
  delete process.env.HUBWRIGHT_TEST_TEMPLATE;
}
