import { Problem } from '@hubwright/contracts/problems';
import type { ReleaseFacts } from './release-facts.ts';

/** Shop policy, on by default and not a rule of 14 CFR 145.213: who did some of the work does not release it. */
export function refuseOwnWork({ steps, shop }: ReleaseFacts, personId: string): void {
  if (shop.inspectOwnWork.includes('return-to-service')) return;
  const own = steps.find(
    ({ level, kind, signOff, supervisorId }) =>
      level === 'perform' && kind !== 'inspect' && [signOff?.personId, supervisorId].includes(personId),
  );
  if (!own) return;
  throw new Problem(
    'own-inspection',
    `You signed “${own.title}” on ${own.traveler.number}; someone else releases this unit`,
    {
      step: own.title,
    },
  );
}
