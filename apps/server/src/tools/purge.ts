import { parseArgs } from 'node:util';
import { listPurgeable, PurgeRefused, purgeOrder } from '../modules/records/purge-order.ts';
import { joinEmbeddedPostgres } from '../platform/embedded-postgres/start.ts';
import { readSettings } from '../settings.ts';

// `npm run purge` lists the closed work orders and ended balances on the aircraft whose records may be destroyed by the shop's own policy.
// `npm run purge -- WO-1001 --by <sign-in name of an administrator>` destroys one's, and leaves a signed proof.
const { values, positionals } = parseArgs({ allowPositionals: true, options: { by: { type: 'string' } } });
const settings = readSettings(process.env);
const embedded = settings.ownerUrl ? undefined : await joinEmbeddedPostgres(settings.dataFolder);
const url = settings.ownerUrl ?? embedded?.url ?? '';
const at = new Date();
const today = at.toISOString().slice(0, 10);
try {
  const [number] = positionals;
  if (number) {
    const places = { url, dataFolder: settings.dataFolder };
    const proof = await purgeOrder(places, { number, by: values.by ?? '', at, today });
    console.log(
      `Destroyed: ${proof.what}. ${proof.chains.length} chains, ${proof.entries} entries. Proof ${proof.id}.`,
    );
  } else {
    const orders = await listPurgeable(url, today);
    for (const order of orders)
      console.log(`${order.number}  approved or ended ${order.approvedOn}  since ${order.from}`);
    console.log(`${orders.length} orders may be purged. Take a backup first: what is destroyed is gone.`);
  }
} catch (error) {
  if (!(error instanceof PurgeRefused)) throw error;
  console.error(`Nothing was destroyed. ${error.message}`);
  process.exitCode = 1;
} finally {
  await embedded?.stop();
}
