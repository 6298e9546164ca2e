import { openShop } from './shop.ts';
import { shortageRows } from './shortages.ts';
import { send } from './load.ts';
const shop = await openShop();
try { await shortageRows({ port: shop.inProcessPort, cookie: shop.cookie, bins: shop.bins }, shop.environment.DATABASE_URL ?? '');
 for (let i=0;i<2;i++) { const a = await send(shop.inProcessPort, {method:'GET', path:'/api/kits-to-fill', headers:{cookie: shop.cookie}}); const b = JSON.parse(a.body); console.log(a.status, a.milliseconds|0, a.body.length, b.kits?.length, b.leftOut?.length, b.proof, b.value, b.bound, b.detail);} }
finally { await shop.close(); }
process.exit(0);
