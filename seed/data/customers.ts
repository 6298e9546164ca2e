import type { customerOperations } from '@hubwright/contracts/customers/operations';
import type { SourceClass } from '@hubwright/contracts/inventory/operations';
import type { Sent } from '@hubwright/contracts/operation';

interface AircraftSeed {
  readonly registration: string;
  readonly airframe: string;
  readonly engine: string;
  /** Airframe hours today, and how many hours it flies in a month. */
  readonly hours: number;
  readonly monthly: number;
}
export type CustomerSeed = Sent<typeof customerOperations.addCustomer> & { readonly aircraft: readonly AircraftSeed[] };

const makerOnly: SourceClass[] = ['maker-new'];
const newOnly: SourceClass[] = ['maker-new', 'approved-manufacturer'];
const usedToo: SourceClass[] = ['maker-new', 'approved-manufacturer', 'used-serviceable'];
const everything: SourceClass[] = [...usedToo, 'customer-supplied'];

const courser = { airframe: 'Heronby Courser 4', engine: 'Brindle B-540' };
const pinnace = { airframe: 'Heronby Pinnace', engine: 'Brindle B-360' };
const fieldmaster = { airframe: 'Maddock Fieldmaster', engine: 'Brindle B-540' };
const stormcrane = { airframe: 'Orrick Stormcrane', engine: 'Brindle T-620' };
const twin = { airframe: 'Orrick Twinlark', engine: 'Brindle B-540' };

export const customers: readonly CustomerSeed[] = [
  {
    code: 'BRACKEN',
    name: 'Brackenmoor Air Charter',
    contactName: 'Leda Varley',
    email: 'maintenance@brackenmoor.example.com',
    phone: '555-0101',
    address: 'Hangar 2, Brackenmoor Field',
    acceptedSources: newOnly,
    aircraft: [
      { registration: 'ZZ-BMA', ...twin, hours: 6_412.3, monthly: 58 },
      { registration: 'ZZ-BMC', ...twin, hours: 5_120.8, monthly: 61 },
      { registration: 'ZZ-BMD', ...courser, hours: 2_840.1, monthly: 22 },
      { registration: 'ZZ-BSC', ...stormcrane, hours: 9_880.4, monthly: 66 },
    ],
  },
  {
    code: 'OXLIP',
    name: 'Oxlip Valley Flying Club',
    contactName: 'Emrys Tolland',
    email: 'secretary@oxlip.example.com',
    phone: '555-0102',
    acceptedSources: usedToo,
    aircraft: [
      { registration: 'ZZ-OVA', ...pinnace, hours: 3_911.5, monthly: 34 },
      { registration: 'ZZ-OVB', ...pinnace, hours: 4_702, monthly: 29 },
    ],
  },
  {
    code: 'FERNSIDE',
    name: 'Fernside Agricultural Spraying',
    contactName: 'Dorrie Pask',
    email: 'dorrie@fernside.example.com',
    phone: '555-0103',
    acceptedSources: usedToo,
    aircraft: [{ registration: 'ZZ-FAS', ...fieldmaster, hours: 7_254.6, monthly: 71 }],
  },
  {
    code: 'GALENA',
    name: 'Galena Ridge Air Ambulance',
    contactName: 'Ivo Sarrett',
    email: 'stores@galenaridge.example.com',
    phone: '555-0104',
    acceptedSources: makerOnly,
    aircraft: [{ registration: 'ZZ-GRA', ...twin, hours: 9_018.9, monthly: 83 }],
  },
  {
    code: 'PELLOW',
    name: 'Pellow & Daughters Aviation',
    contactName: 'Jessamy Pellow',
    email: 'jessamy@pellow.example.com',
    phone: '555-0105',
    acceptedSources: everything,
    aircraft: [{ registration: 'ZZ-PDA', ...courser, hours: 1_702.4, monthly: 9 }],
  },
  {
    code: 'WHINFELL',
    name: 'Whinfell Survey Flights',
    contactName: 'Rolf Anstey',
    email: 'ops@whinfell.example.com',
    phone: '555-0106',
    acceptedSources: newOnly,
    aircraft: [{ registration: 'ZZ-WSF', ...twin, hours: 4_433.2, monthly: 47 }],
  },
  {
    code: 'TARNHOLM',
    name: 'Tarnholm Leasing',
    contactName: 'Una Brisco',
    email: 'assets@tarnholm.example.com',
    phone: '555-0107',
    acceptedSources: makerOnly,
    aircraft: [
      { registration: 'ZZ-TLA', ...courser, hours: 3_300.7, monthly: 40 },
      { registration: 'ZZ-TLB', ...pinnace, hours: 2_211.9, monthly: 36 },
    ],
  },
  {
    code: 'COLDBECK',
    name: 'Coldbeck Maintenance',
    contactName: 'Hamo Strick',
    email: 'parts@coldbeck.example.com',
    phone: '555-0108',
    address: 'Hangar 5, Coldbeck Strip',
    acceptedSources: usedToo,
    aircraft: [],
  },
  {
    code: 'LARKRISE',
    name: 'Larkrise Sky Tours',
    contactName: 'Petra Noone',
    email: 'petra@larkrise.example.com',
    phone: '555-0109',
    acceptedSources: newOnly,
    aircraft: [{ registration: 'ZZ-LST', ...courser, hours: 5_870.2, monthly: 44 }],
  },
  {
    code: 'MERRICK',
    name: 'Aldous Merrick',
    contactName: 'Aldous Merrick',
    email: 'aldous@merrick.example.com',
    phone: '555-0110',
    acceptedSources: everything,
    aircraft: [{ registration: 'ZZ-AMK', ...pinnace, hours: 1_140.6, monthly: 5 }],
  },
  {
    code: 'SEDGELEY',
    name: 'Sedgeley Flight Training',
    contactName: 'Cosima Reeve',
    email: 'engineering@sedgeley.example.com',
    phone: '555-0111',
    acceptedSources: newOnly,
    aircraft: [
      { registration: 'ZZ-SFT', ...pinnace, hours: 8_804.4, monthly: 66 },
      { registration: 'ZZ-SFU', ...pinnace, hours: 8_120.1, monthly: 62 },
    ],
  },
  {
    code: 'HOLMWOOD',
    name: 'Holmwood Island Ferries',
    contactName: 'Breck Tindall',
    email: 'breck@holmwood.example.com',
    phone: '555-0112',
    acceptedSources: newOnly,
    aircraft: [{ registration: 'ZZ-HIF', ...twin, hours: 7_711.1, monthly: 90 }],
  },
];
