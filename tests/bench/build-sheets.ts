import { type ChargeSpec, chargeWanted, judgeCharge } from '@hubwright/rules/charge';
import { type FitSpec, fitProposed } from '@hubwright/rules/fit';
import { judgeTorque, passesOf, placesOf, type TorqueSpec } from '@hubwright/rules/torque';
import { median } from './load.ts';

/** Twelve kinds of forty nuts, six passes and one more after cycling: the largest sheet a revision may ask for. */
const torque: TorqueSpec = {
  ...{ unit: 'in-lb', lengthUnit: 'in', cycles: 10 },
  groups: Array.from({ length: 12 }, (_, index) => ({
    ...{ name: `kind ${index} nut`, count: 40, low: '290.5', high: '310.5', threads: 'dry', retorque: true },
    ...{ passes: ['20', '40', '60', '80', '90', '100'], safety: 'safety wire' },
  })),
};
const adapter = { lever: '10', length: '0.0001', effect: 'longer' } as const;
const torqued = {
  passes: passesOf(torque).map(({ group, title, low, high, places }) => {
    const setting = low.plus(high).div(2).toFixed(2);
    return { group: group.name, pass: title, setting, adapter, places };
  }),
  ...{ cycled: 10, threads: torque.groups.map(({ name }) => name), safetied: torque.groups.flatMap(placesOf) },
};

const charge: ChargeSpec = {
  ...{ medium: 'dry air', unit: 'psi', temperatureUnit: 'degF', tolerance: '2', settleMinutes: 30 },
  table: Array.from({ length: 60 }, (_, row) => ({ at: String(row * 2), pressure: String(70 + row) })),
};
const charged = { medium: 'dry air', temperature: '117', settledMinutes: '30', pressure: '128.5' };

/** Ten sizes, up to six pieces, a band that no pack meets: every pack is looked at. */
const fit: FitSpec = {
  ...{ unit: 'in', places: ['blade 1'], constant: '0', mostPieces: 6 },
  terms: [{ name: 'gap', sign: '+' }],
  leaves: { kind: 'end-play', low: '0', high: '0' },
  shims: Array.from({ length: 10 }, (_, index) => ({ thickness: (0.01 + index * 0.002).toFixed(3) })),
  trial: { name: 'torque', unit: 'in-lb', low: '0', high: '1' },
};
const gap = [{ name: 'gap', value: '0.1001' }];

function timed(work: () => unknown, times: number): number {
  const before = process.cpuUsage();
  for (let again = 0; again < times; again += 1) work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000 / times;
}

function row(what: string, size: string, spent: readonly number[]): string[] {
  const spread = `${Math.min(...spent).toFixed(2)} to ${Math.max(...spent).toFixed(2)} ms`;
  return [what, `${median([...spent]).toFixed(2)} ms`, '–', '–', spread, size];
}

/** The rules behind the sheets of a build, each at the largest a revision may ask for. */
export function buildRows(rounds: number): string[][] {
  const each = (work: () => unknown, times: number) => {
    timed(work, times);
    return Array.from({ length: rounds }, () => timed(work, times));
  };
  return [
    row(
      'torque sheet judged',
      '480 nuts, 7 passes',
      each(() => judgeTorque(torqued, torque), 20),
    ),
    row(
      'charge wanted and judged',
      '60 rows',
      each(() => [chargeWanted(charge, '117'), judgeCharge(charged, charge)], 200),
    ),
    row(
      'shims of one place proposed',
      '10 sizes, 6 pieces, none fits',
      each(() => fitProposed(fit, gap), 20),
    ),
  ];
}
