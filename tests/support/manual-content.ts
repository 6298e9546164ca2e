import { boundTo } from '../../seed/data/manuals/build-sheets.ts';
import { quillon3Blade } from '../../seed/data/manuals/quillon-3-blade.ts';
import { quillon4Blade } from '../../seed/data/manuals/quillon-4-blade.ts';
import type { ContentSeed } from '../../seed/data/manuals/shapes.ts';
import { readsOf } from './arrivals.ts';
import type { ShopApp } from './shop-app.ts';

/** Revision 5 of the three-blade manual. */
export function threeBladeContent(shop: ShopApp) {
  return bound(shop, 'Q3C-76', quillon3Blade('5'));
}

/** Revision 4 of the four-blade manual. */
export function fourBladeContent(shop: ShopApp) {
  return bound(shop, 'Q4F-84', quillon4Blade('4'));
}

/** The same content, its angles bound to the applications the shop has. */
async function bound(shop: ShopApp, designation: string, content: ContentSeed) {
  const applications = await readsOf(shop).application.findMany({ where: { model: { designation } } });
  const idsOf = (airframe: string) => applications.filter((one) => one.airframe === airframe).map(({ id }) => id);
  return { ...content, routes: boundTo(content.routes, idsOf) };
}
