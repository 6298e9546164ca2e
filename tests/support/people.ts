import { peopleOperations } from '@hubwright/contracts/people/operations';
import type { Role } from '@hubwright/contracts/roles';
import { Reads } from '../../apps/server/src/platform/database/reads.ts';
import { demoPassword, demoPin } from '../../seed/data/people.ts';
import type { ShopApp, Visitor } from './shop-app.ts';

/** Who the demonstration signs in as for each role. */
const signInNames: Record<Role, string> = {
  'front-desk': 'desk',
  'parts-room': 'parts',
  technician: 'tech',
  inspector: 'inspector',
  manager: 'manager',
  administrator: 'admin',
};

/** The signature everyone in the invented shop gives. */
export const pin = { pin: demoPin };

/** A browser in which the person of that role, or of that sign-in name, has signed in. The shop was opened from `shop`. */
export async function as(shop: ShopApp, who: Role | (string & {})): Promise<Visitor> {
  const visitor = shop.visitor();
  const signInName = signInNames[who as Role] ?? who;
  const answer = await visitor.call(peopleOperations.signIn, { signInName, password: demoPassword });
  if (answer.status !== 200) throw new Error(`${signInName} could not sign in: ${JSON.stringify(answer.body)}`);
  return visitor;
}

/** The same person as the actor of `shop.run`. */
export async function actorOf(
  shop: ShopApp,
  who: Role | (string & {}),
): Promise<{ personId: string; roles: readonly Role[] }> {
  const signInName = signInNames[who as Role] ?? who;
  const { id, roles } = await shop.running.app
    .get(Reads)
    .models.person.findUniqueOrThrow({ where: { signInName }, select: { id: true, roles: true } });
  return { personId: id, roles: roles as Role[] };
}
