import type { Sent } from '@hubwright/contracts/operation';
import { peopleOperations } from '@hubwright/contracts/people/operations';
import type { Role } from '@hubwright/contracts/roles';
import { addPerson } from '../../apps/server/src/modules/people/add-person.command.ts';
import { chooseOwnPassword } from '../../apps/server/src/modules/people/choose-own-password.command.ts';
import { setUpShop } from '../../apps/server/src/modules/people/set-up-shop.command.ts';
import { serverActor } from '../../apps/server/src/platform/command/actor.ts';
import type { ShopApp, Visitor } from './shop-app.ts';

export const demoPassword = 'willow bark in the workshop';

/** What an administrator gives; its person replaces it before anything else. */
const firstPassword = 'handed over on the first morning';

/** The least shop there is: a profile and one administrator called `first`. */
export const smallestShop: Sent<typeof peopleOperations.setUpShop> = {
  shop: {
    name: 'Tansy Hollow Airscrew Works',
    certificateNumber: 'THAW-0001',
    ratings: ['Propeller, class 2'],
    authority: 'the demonstration authority',
    recordStatements: {
      approval: 'The work named was done and found good.',
      caution: 'Demonstration data, not for use on aircraft.',
    },
    zone: 'America/Chicago',
    currency: 'USD',
    units: 'inch',
    labourRateMinor: 12_000,
    evaluationFeeMinor: 45_000,
    taxPercent: '6.5',
    taxRounding: 'total',
    quoteValidDays: 30,
    inspectOwnWork: [],
    secondFactorRoles: [],
  },
  administrator: { signInName: 'first', displayName: 'First Administrator', initials: 'FA', password: demoPassword },
};

export async function setUp(shop: ShopApp): Promise<void> {
  await shop.run(setUpShop, smallestShop, serverActor);
}

/** Adds a person who has chosen a password and a PIN of their own. */
export async function newPerson(
  shop: ShopApp,
  person: { signInName: string; displayName: string; initials: string; roles: Role[] },
  chosen: { password: string; pin: string } = { password: demoPassword, pin: '2468' },
): Promise<{ personId: string; roles: Role[]; signInName: string }> {
  const added = await shop.run(
    addPerson,
    { ...person, password: firstPassword },
    { personId: serverActor.personId, roles: ['administrator'] },
  );
  const { roles, signInName } = person;
  const own = { password: firstPassword, newPassword: chosen.password, pin: chosen.pin };
  await shop.run(chooseOwnPassword(''), own, { personId: added.id, roles });
  return { personId: added.id, roles, signInName };
}

/** The same with one role, and a name that says it. */
export function personWith(shop: ShopApp, role: Role, signInName = `the-${role}`) {
  return newPerson(shop, { signInName, displayName: `Tansy, ${role}`, initials: 'XX', roles: [role] });
}

/** A browser where this person has signed in. */
export async function signedIn(shop: ShopApp, signInName: string): Promise<Visitor> {
  const visitor = shop.visitor();
  const answer = await visitor.call(peopleOperations.signIn, { signInName, password: demoPassword });
  if (answer.status !== 200)
    throw new Error(`sign-in of ${signInName} answered ${answer.status}: ${JSON.stringify(answer.body)}`);
  return visitor;
}
