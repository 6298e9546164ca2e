import type { Sent } from '@hubwright/contracts/operation';
import type { mediaOperations } from '@hubwright/contracts/peening/media-operations';
import type { peeningOperations } from '@hubwright/contracts/peening/operations';

type Setup = Omit<Sent<typeof peeningOperations.qualifySetup>, 'machineId' | 'signature'>;
type Area = Setup['areas'][number];
type Media = Omit<Sent<typeof mediaOperations.addPeeningMedia>, 'machineId'>;
type Check = Omit<Sent<typeof mediaOperations.checkPeeningMedia>, 'mediaId' | 'signature' | 'meterHours'>;

/** Strips that saturate near `time` with the intensity wanted: demonstration data, invented. */
function area(name: string, band: readonly [low: string, high: string], heights: readonly string[]): Area {
  const times = ['2', '4', '6', '8', '12', '16'];
  const strips = heights.map((arcHeight, index) => ({ time: times[index] ?? '1', arcHeight }));
  return { name, strip: 'A', low: band[0], high: band[1], unit: 'in', form: 'exponential', exposure: '8', strips };
}

export const peeningMachine = { code: 'PEEN-01', title: 'Air-blast cabinet, two nozzles' };

/** Cast steel shot with limits by sieve: demonstration data, invented. */
export const shot: Media = {
  ...{
    code: 'SH-2214',
    size: 'S170',
    supplier: 'Marlbeck Shot Works',
    supplierLot: 'MS-70881',
    certificate: 'C-70881',
  },
  limits: {
    sieves: [
      { name: 'on 0.0331 in', high: '0' },
      { name: 'on 0.0232 in', high: '10' },
      { name: 'on 0.0165 in and above', low: '85' },
      { name: 'on 0.0138 in and above', low: '97' },
    ],
    mostBroken: 12,
    field: 'half an inch square',
  },
  everyDays: 30,
};

/** What was in the cabinet before. */
export const olderShot: Media = { ...shot, code: 'SH-2107', supplierLot: 'MS-66204', certificate: 'C-66204' };

/** A good check: nothing coarse, next to nothing fine, a few pieces broken. It wears a little from check to check. */
export function goodCheck(wear = 0): Check {
  const percents = ['0', '6.5', (91 - wear * 0.3).toFixed(1), (98.6 - wear * 0.1).toFixed(1)];
  return {
    sieves: shot.limits.sieves.map(({ name }, index) => ({ name, percent: percents[index] ?? '0' })),
    ...{ broken: 3 + (wear % 5), clean: true },
  };
}

/** The program the four-blade propellers are peened with, each area with a band of its own. */
export const bladeProgram: Setup = {
  program: 'blades 84 in',
  parameters: [
    { name: 'nozzles', value: '2', unit: '' },
    { name: 'nozzle bore', value: '0.375', unit: 'in' },
    { name: 'air pressure', value: '38', unit: 'psi' },
    { name: 'shot flow', value: '9.5', unit: 'lb/min' },
    { name: 'stand-off', value: '6.0', unit: 'in' },
    { name: 'speed', value: '12', unit: 'in/min' },
    { name: 'angle', value: '80', unit: 'degrees' },
  ],
  areas: [
    area('leading edge', ['0.0080', '0.0110'], ['0.0058', '0.0083', '0.0093', '0.0098', '0.0101', '0.0102']),
    area('trailing edge', ['0.0060', '0.0090'], ['0.0046', '0.0065', '0.0073', '0.0077', '0.0079', '0.0080']),
    area('shank', ['0.0090', '0.0120'], ['0.0064', '0.0091', '0.0103', '0.0108', '0.0111', '0.0112']),
  ],
};
