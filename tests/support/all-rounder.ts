import { roles } from '@hubwright/contracts/roles';
import { addPerson } from '../../apps/server/src/modules/people/add-person.command.ts';
import { serverActor } from '../../apps/server/src/platform/command/actor.ts';
import { demoPassword, signedIn } from './builders.ts';
import type { ShopApp, Visitor } from './shop-app.ts';

/** Someone who holds every role, signed in: no door stops them, so what refuses is what lies behind. */
export async function allRounder(shop: ShopApp): Promise<Visitor> {
  const signInName = 'all-rounder';
  await shop.run(
    addPerson,
    { signInName, displayName: 'Every Role', initials: 'ER', roles: [...roles], password: demoPassword, pin: '2468' },
    { personId: serverActor.personId, roles: ['administrator'] },
  );
  return signedIn(shop, signInName);
}
