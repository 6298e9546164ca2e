import type { Sent } from '@hubwright/contracts/operation';
import type { peopleOperations } from '@hubwright/contracts/people/operations';

/** The invented shop. Everything under seed/ is demonstration data, not for use on aircraft. */
export const shop: Sent<typeof peopleOperations.setUpShop>['shop'] = {
  name: 'Tansy Hollow Airscrew Works',
  certificateNumber: 'THAW-0001',
  ratings: ['Propeller class 1', 'Propeller class 2', 'Accessory class 1, propeller governors'],
  authority: 'the demonstration authority',
  recordStatements: {
    approval:
      'The work named in this record was done and inspected under the current procedures of this shop and is approved for return to service.',
    caution: 'Demonstration data, not for use on aircraft.',
  },
  zone: 'America/Chicago',
  currency: 'USD',
  units: 'inch',
  labourRateMinor: 12_400,
  evaluationFeeMinor: 48_000,
  taxPercent: '6.5',
  taxRounding: 'total',
  quoteValidDays: 30,
  inspectOwnWork: [],
  namesPersonCertificate: true,
  // The demonstration lets everyone in with one password: a shop that works for real keeps the administrators' second factor.
  secondFactorRoles: [],
};
