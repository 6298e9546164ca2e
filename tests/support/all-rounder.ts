import { roles } from '@hubwright/contracts/roles';
import { newPerson, signedIn } from './builders.ts';
import type { ShopApp, Visitor } from './shop-app.ts';

/** Someone who holds every role, signed in: no door stops them, so what refuses is what lies behind. */
export async function allRounder(shop: ShopApp): Promise<Visitor> {
  const signInName = 'all-rounder';
  await newPerson(shop, { signInName, displayName: 'Every Role', initials: 'ER', roles: [...roles] });
  return signedIn(shop, signInName);
}
