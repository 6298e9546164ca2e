import type { Sent } from '@hubwright/contracts/operation';
import type { peeningOperations } from '@hubwright/contracts/peening/operations';

type Setup = Omit<Sent<typeof peeningOperations.qualifySetup>, 'machineId' | 'signature'>;
type Area = Setup['areas'][number];

/** Strips that saturate near `time` with the intensity wanted: demonstration data, invented. */
function area(name: string, band: readonly [low: string, high: string], heights: readonly string[]): Area {
  const times = ['2', '4', '6', '8', '12', '16'];
  const strips = heights.map((arcHeight, index) => ({ time: times[index] ?? '1', arcHeight }));
  return { name, strip: 'A', low: band[0], high: band[1], unit: 'in', form: 'exponential', exposure: '8', strips };
}

export const peeningMachine = { code: 'PEEN-01', title: 'Air-blast cabinet, two nozzles' };

/** The program the four-blade propellers are peened with, each area with a band of its own. */
export const bladeProgram: Setup = {
  program: 'blades 84 in',
  parameters: [
    { name: 'nozzle bore', value: '0.375', unit: 'in' },
    { name: 'air pressure', value: '38', unit: 'psi' },
    { name: 'shot flow', value: '9.5', unit: 'lb/min' },
    { name: 'stand-off', value: '6.0', unit: 'in' },
    { name: 'nozzle travel', value: '12', unit: 'in/min' },
  ],
  mediaSize: 'S170',
  mediaLot: 'SH-2214',
  areas: [
    area('leading edge', ['0.0080', '0.0110'], ['0.0058', '0.0083', '0.0093', '0.0098', '0.0101', '0.0102']),
    area('trailing edge', ['0.0060', '0.0090'], ['0.0046', '0.0065', '0.0073', '0.0077', '0.0079', '0.0080']),
    area('shank', ['0.0090', '0.0120'], ['0.0064', '0.0091', '0.0103', '0.0108', '0.0111', '0.0112']),
  ],
};
