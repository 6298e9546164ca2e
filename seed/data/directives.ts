import type { directiveOperations } from '@hubwright/contracts/directives/operations';
import type { Sent } from '@hubwright/contracts/operation';

type Given = Sent<typeof directiveOperations.issueDirective>;

/** All of it invented: demonstration data, not for use on aircraft. Days are counted from today. */
export type DirectiveSeed = Omit<Given, 'issuedOn' | 'effectiveOn' | 'lines' | 'signature'> & {
  readonly issued: number;
  readonly effective: number;
  readonly model: string;
  readonly serials?: { readonly serialFrom: string; readonly serialTo: string };
};

export const directives: readonly DirectiveSeed[] = [
  // Again and again until the later seat is fitted; complied with on VG3381 a year ago.
  {
    ...{ kind: 'airworthiness-directive', number: 'ZZ-25-014', title: 'Governor, speeder spring seat' },
    ...{ issuer: 'the authority', issued: -310, effective: -305, binding: 'required', repeats: 'recurring' },
    everyMonths: 12,
    action: 'Look at the seat of the speeder spring for fretting, by part B of Vexley bulletin 14-7.',
    terminatingAction: 'Fit the hardened seat, by part C of the bulletin.',
    labourMinor: 14_500,
    ...{ model: 'VG14', serials: { serialFrom: 'VG3300', serialTo: 'VG3399' } },
  },
  // Once, for a batch of hubs; QC3902 in the shop is one of them and it is open.
  {
    ...{ kind: 'airworthiness-directive', number: 'ZZ-26-003', title: 'Hub, pilot bore radius' },
    ...{ issuer: 'the authority', issued: -60, effective: -50, binding: 'required', repeats: 'one-time' },
    action: 'Check the radius of the pilot bore for tool marks by penetrant; blend within the manual’s limits.',
    labourMinor: 32_000,
    ...{ model: 'Q2C-72', serials: { serialFrom: 'QC3900', serialTo: 'QC3999' } },
  },
  // The same, but it may wait: units out there have it in their due dates.
  {
    ...{ kind: 'airworthiness-directive', number: 'ZZ-26-008', title: 'Spinner bulkhead, attaching screws' },
    ...{ issuer: 'the authority', issued: -40, effective: -30, binding: 'required', repeats: 'one-time' },
    ...{ firstMonths: 12, firstHoursTenths: 2_000 },
    action: 'Change the attaching screws of the spinner bulkhead for those of the later pattern.',
    labourMinor: 9_500,
    ...{ model: 'Q2C-72', serials: { serialFrom: 'QC2900', serialTo: 'QC3199' } },
  },
  // At every overhaul, until the sleeve of the later pattern is fitted.
  {
    ...{ kind: 'service-bulletin', number: 'SB-5-11', title: 'Blade root sleeve, bond check' },
    ...{ issuer: 'Sablewing', issued: -120, effective: -120, binding: 'required', repeats: 'at-overhaul' },
    action: 'Tap the bond of each blade root sleeve all around, by the bulletin’s map.',
    terminatingAction: 'Fit sleeves of the later pattern.',
    ...{ labourMinor: 41_000, model: 'SW5-83' },
  },
];

/** While the unit was here, on which day and how. */
export const compliances = [
  { number: 'ZZ-25-014', serial: 'VG3381', on: -280, method: 'Looked at by part B of bulletin 14-7: no fretting' },
] as const;
