import type { Sent } from '@hubwright/contracts/operation';
import type { equipmentOperations } from '@hubwright/contracts/processes/equipment-operations';

type EquipmentSeed = Sent<typeof equipmentOperations.addEquipment>;
type Check = EquipmentSeed['checks'][number];

const invented = 'Process specification PS-210, invented for the demonstration';
const daily = { by: 'day-of-use' } as const;
const weekly = { by: 'days', every: 7 } as const;

type Limits = readonly [low: string, high: string];

/** Analysed weekly. */
function bath(name: string, unit: string, [low, high]: Limits): Check {
  return { name, unit, low, high, due: weekly, source: invented };
}
const warm = (...limits: Limits): Check => ({ ...bath('bath temperature', '°F', limits), due: daily });

/** Limits of light and daily checks as practice pages of ASTM E1417 and E1444 give them; the shop’s own procedure comes first. */
const lamp = (standard: string): Check => ({
  ...{
    name: 'UV-A at 15 in',
    unit: 'µW/cm²',
    low: '1000',
    due: daily,
    source: `${standard}, as practice pages give it`,
  },
});
const dark = (standard: string, due: Check['due']): Check => ({
  ...{ name: 'ambient light', unit: 'fc', high: '2.0', due, source: `${standard}, as practice pages give it` },
});
const seen = (name: string, source: string): Check => ({ name, confirm: true, due: daily, source });
const practice = 'common practice, no source';

/** Tanks and test systems of the invented shop. */
export const equipment: readonly EquipmentSeed[] = [
  {
    ...{ code: 'STRIP-1', title: 'Paint strip tank', kind: 'strip-tank', process: 'cleaning' },
    checks: [warm('120', '150'), bath('alkalinity', 'oz/gal', ['6.0', '9.0'])],
  },
  {
    ...{ code: 'ANO-1', title: 'Anodise tank, sulphuric', kind: 'anodise-tank', process: 'coating' },
    checks: [
      warm('66', '74'),
      bath('free acid', 'oz/gal', ['20.0', '27.0']),
      { name: 'dissolved aluminium', unit: 'oz/gal', high: '2.0', due: weekly, source: invented },
    ],
  },
  {
    ...{ code: 'CAD-1', title: 'Cadmium tank', kind: 'cadmium-tank', process: 'plating' },
    checks: [bath('cadmium metal', 'oz/gal', ['2.60', '3.60']), warm('70', '90')],
  },
  {
    ...{ code: 'PEN-1', title: 'Penetrant line, fluorescent', kind: 'penetrant-line', process: 'non-destructive-test' },
    checks: [
      lamp('ASTM E1417'),
      dark('ASTM E1417', daily),
      seen('every defect of the known-defect panel shows', practice),
      seen('penetrant and emulsifier clean to the eye', practice),
    ],
  },
  {
    ...{
      code: 'MAG-1',
      title: 'Magnetic bench, wet fluorescent',
      kind: 'magnetic-bench',
      process: 'non-destructive-test',
    },
    checks: [
      lamp('ASTM E1444'),
      seen('ring shows every indication asked for', 'ASTM E1444 / E3024, table 1: daily'),
      seen('water-break test good', 'ASTM E1444 / E3024, table 1: daily'),
      {
        ...{ name: 'concentration', unit: 'mL/100 mL', low: '0.10', high: '0.40', due: { by: 'hours', every: 8 } },
        source: 'ASTM E1444, from memory; every 8 h by its table 1',
      },
      dark('ASTM E1444', weekly),
    ],
  },
];

/** Weekly results of the last weeks, oldest first; the cadmium bath ran low two weeks ago and was put right. */
export const weeklyResults: Readonly<
  Record<string, readonly (readonly [quantity: string, values: readonly string[]])[]>
> = {
  'STRIP-1': [['alkalinity', ['8.1', '7.9', '7.8', '7.4', '7.2', '8.2', '8.0', '7.8', '7.5', '7.4']]],
  'ANO-1': [
    ['free acid', ['24.1', '23.8', '24.0', '23.5', '23.1', '22.8', '24.4', '24.0', '23.7', '23.5']],
    ['dissolved aluminium', ['0.9', '1.0', '1.0', '1.1', '1.2', '1.2', '1.3', '1.4', '1.4', '1.5']],
  ],
  'CAD-1': [['cadmium metal', ['3.21', '3.18', '3.10', '3.07', '3.02', '2.96', '2.81', '2.74', '2.49', '3.08']]],
};
