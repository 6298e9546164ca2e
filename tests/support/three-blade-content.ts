import { boundTo } from '../../seed/data/manuals/build-sheets.ts';
import { quillon3Blade } from '../../seed/data/manuals/quillon-3-blade.ts';
import { readsOf } from './arrivals.ts';
import type { ShopApp } from './shop-app.ts';

/** Revision 5 of the three-blade manual, its angles bound to the applications the shop has. */
export async function threeBladeContent(shop: ShopApp) {
  const applications = await readsOf(shop).application.findMany({ where: { model: { designation: 'Q3C-76' } } });
  const content = quillon3Blade('5');
  const idsOf = (airframe: string) => applications.filter((one) => one.airframe === airframe).map(({ id }) => id);
  return { ...content, routes: boundTo(content.routes, idsOf) };
}
