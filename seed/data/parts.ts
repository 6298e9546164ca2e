// size: tables of data, one entry a line
import type { partOperations } from '@hubwright/contracts/inventory/part-operations';
import type { Sent } from '@hubwright/contracts/operation';

/** A part number with its supplier's code. Numbers, prices and lives are invented: demonstration data, not for use on aircraft. */
export type PartSeed = Omit<Sent<typeof partOperations.addPart>, 'supplierId'> & { readonly supplier: string };

const quillon = { maker: 'Quillon', supplier: 'QUILLON', issueUnit: 'piece', leadTimeDays: 21 } as const;
const vexley = { maker: 'Vexley', supplier: 'VEXLEY', issueUnit: 'piece', leadTimeDays: 28 } as const;

const seal = (number: string, description: string, unitPrice: string, more: Partial<PartSeed> = {}): PartSeed => ({
  ...quillon,
  supplier: 'HARROW',
  number,
  description,
  class: 'seal',
  unitPrice,
  shelfLifeMonths: 60,
  minimumDaysAtBuild: 180,
  leadTimeDays: 14,
  homeBin: 'A-01',
  ...more,
});
const hardware = (
  number: string,
  description: string,
  unitPrice: string,
  homeBin = 'B-01',
  packSize = 25,
): PartSeed => ({
  ...quillon,
  supplier: 'DUNWICK',
  number,
  description,
  class: 'hardware',
  unitPrice,
  homeBin,
  packSize,
  leadTimeDays: 10,
});
const mandatory = (number: string, description: string, unitPrice: string, more: Partial<PartSeed> = {}): PartSeed => ({
  ...quillon,
  number,
  description,
  class: 'mandatory',
  unitPrice,
  homeBin: 'C-01',
  ...more,
});
const serialized = (
  number: string,
  description: string,
  unitPrice: string,
  more: Partial<PartSeed> = {},
): PartSeed => ({
  ...quillon,
  number,
  description,
  class: 'serialized',
  serialised: true,
  unitPrice,
  leadTimeDays: 60,
  homeBin: 'D-02',
  ...more,
});
const consumable = (number: string, description: string, unitPrice: string, more: Partial<PartSeed>): PartSeed => ({
  maker: 'Larkmead',
  supplier: 'LARKMEAD',
  leadTimeDays: 5,
  issueUnit: 'gram',
  number,
  description,
  class: 'consumable',
  unitPrice,
  homeBin: 'E-01',
  ...more,
});

/** Alternates come before what they stand in for. */
export const parts: readonly PartSeed[] = [
  // Quillon Q3C, three blades
  seal('Q301-11A', 'O-ring, blade shank, fluorocarbon', '11.40'),
  seal('Q301-11', 'O-ring, blade shank', '7.85', { alternates: ['Q301-11A'] }),
  seal('Q301-12', 'O-ring, piston', '9.20'),
  seal('Q301-13', 'O-ring, cylinder flange', '6.10', { homeBin: 'A-02' }),
  seal('Q301-14', 'O-ring, pitch change rod', '4.95', { homeBin: 'A-02' }),
  seal('Q301-15', 'Gasket, hub halves', '31.50', { supplier: 'QUILLON', leadTimeDays: 21, homeBin: 'A-02' }),
  seal('Q301-16', 'O-ring, mounting face', '5.60', { homeBin: 'A-03' }),
  seal('Q301-17', 'Dust seal, piston, felt', '14.75', { homeBin: 'A-03', shelfLifeMonths: 120 }),
  mandatory('Q301-21', 'Bearing ball, blade retention', '1.95', { supplier: 'OSTREY', packSize: 50, leadTimeDays: 30 }),
  mandatory('Q301-22', 'Bearing race half, blade retention, matched', '148.00', {
    supplier: 'OSTREY',
    leadTimeDays: 45,
  }),
  mandatory('Q301-23', 'Needle bearing, pitch link', '38.60', { supplier: 'OSTREY' }),
  mandatory('Q301-24', 'Bushing, pitch link', '12.30', { homeBin: 'C-02' }),
  mandatory('Q301-25', 'Guide block, fork', '17.90', { homeBin: 'C-02' }),
  mandatory('Q301-26', 'Retaining ring, cylinder', '8.40', { homeBin: 'C-02' }),
  mandatory('Q301-27', 'Snap ring, piston', '5.25', { homeBin: 'C-02' }),
  hardware('Q301-31A', 'Self-locking nut, hub, high temperature', '6.90'),
  { ...hardware('Q301-31', 'Self-locking nut, hub', '4.70'), alternates: ['Q301-31A'] },
  hardware('Q301-32', 'Bolt, hub', '23.80', 'B-02', 1),
  hardware('Q301-33', 'Cotter pin, pitch link', '0.85', 'B-03', 100),
  hardware('Q301-34', 'Cotter pin, mounting nut', '0.95', 'B-03', 100),
  hardware('Q301-35', 'Bolt, blade clamp', '41.20', 'B-02', 1),
  hardware('Q301-36', 'Self-locking nut, blade clamp', '5.35'),
  hardware('Q301-37', 'Washer, blade clamp', '1.40', 'B-03', 50),
  hardware('Q301-38', 'Screw, counterweight', '3.15', 'B-02'),
  hardware('Q301-39', 'Screw, spinner bulkhead', '1.10', 'B-02', 50),
  hardware('Q301-40', 'Washer, spinner, fibre', '0.45', 'B-03', 100),
  hardware('Q301-41', 'Grease fitting', '2.80', 'B-03'),
  hardware('Q301-42', 'Cap, grease fitting', '0.70', 'B-03', 50),
  hardware('Q301-43', 'Nut, mounting stud', '9.60'),
  hardware('Q301-44', 'Lock nut, low pitch stop', '7.75'),
  { ...mandatory('Q301-51', 'Spring, pitch return', '96.00', { homeBin: 'D-01' }), class: 'hardware' },
  { ...mandatory('Q301-52', 'Rod, pitch change', '412.00', { homeBin: 'D-01', leadTimeDays: 40 }), class: 'hardware' },
  { ...mandatory('Q301-53', 'Link, pitch change', '118.00', { homeBin: 'D-01' }), class: 'hardware' },
  serialized('Q301-61', 'Hub, three-blade, steel', '5840.00'),
  serialized('Q301-62', 'Piston', '690.00'),
  serialized('Q301-63', 'Cylinder', '1270.00'),
  serialized('Q301-64', 'Blade clamp, pair', '830.00'),
  serialized('Q76-B', 'Blade, aluminium, 76 in', '5120.00', { homeBin: 'D-03', leadTimeDays: 90 }),
  // Quillon Q2C, two blades
  seal('Q201-11', 'O-ring, blade shank', '7.10'),
  seal('Q201-12', 'O-ring, piston', '8.30'),
  seal('Q201-13', 'O-ring, cylinder', '5.45', { homeBin: 'A-02' }),
  seal('Q201-15', 'Gasket, hub halves', '24.80', { supplier: 'QUILLON', leadTimeDays: 21, homeBin: 'A-02' }),
  seal('Q201-16', 'O-ring, mounting face', '5.20', { homeBin: 'A-03' }),
  mandatory('Q201-21', 'Bearing ball, blade retention', '1.75', { supplier: 'OSTREY', packSize: 50, leadTimeDays: 30 }),
  mandatory('Q201-24', 'Bushing, pitch link', '10.90', { homeBin: 'C-02' }),
  mandatory('Q201-26', 'Retaining ring, cylinder', '7.60', { homeBin: 'C-02' }),
  hardware('Q201-32', 'Bolt, hub', '21.40', 'B-02', 1),
  { ...mandatory('Q201-51', 'Spring, pitch return', '88.00', { homeBin: 'D-01' }), class: 'hardware' },
  serialized('Q201-61', 'Hub, two-blade, aluminium', '3980.00'),
  serialized('Q72-B', 'Blade, aluminium, 72 in', '3860.00', { homeBin: 'D-03', leadTimeDays: 75 }),
  // Vexley VG14 governor
  seal('V14-11', 'O-ring, body', '3.95', { maker: 'Vexley', supplier: 'VEXLEY', homeBin: 'F-01' }),
  seal('V14-12', 'O-ring, control shaft', '3.40', { maker: 'Vexley', supplier: 'VEXLEY', homeBin: 'F-01' }),
  seal('V14-13', 'Gasket, mounting pad with screen', '18.60', { maker: 'Vexley', supplier: 'VEXLEY', homeBin: 'F-01' }),
  seal('V14-14', 'Oil seal, drive shaft', '22.10', { maker: 'Vexley', supplier: 'VEXLEY', homeBin: 'F-01' }),
  mandatory('V14-21', 'Ball bearing, flyweight head', '64.00', { ...vexley, homeBin: 'F-01' }),
  mandatory('V14-22', 'Bushing, pilot valve', '47.50', { ...vexley, homeBin: 'F-01' }),
  mandatory('V14-23', 'Pin, flyweight toe', '9.80', { ...vexley, homeBin: 'F-01' }),
  mandatory('V14-24', 'Relief valve seat', '33.20', { ...vexley, homeBin: 'F-01' }),
  { ...hardware('V14-31', 'Screw, body', '1.60', 'F-01'), ...vexley },
  { ...hardware('V14-32', 'Lock washer, body', '0.55', 'F-01', 50), ...vexley },
  { ...hardware('V14-33', 'Cotter pin, control lever', '0.60', 'F-01', 50), ...vexley },
  { ...hardware('V14-34', 'Self-locking nut, control lever', '2.95', 'F-01'), ...vexley },
  { ...mandatory('V14-51', 'Speeder spring', '71.00', { ...vexley, homeBin: 'F-01' }), class: 'hardware' },
  { ...mandatory('V14-52', 'Relief valve spring', '28.40', { ...vexley, homeBin: 'F-01' }), class: 'hardware' },
  { ...mandatory('V14-53', 'Pump gear set, matched', '264.00', { ...vexley, homeBin: 'F-02' }), class: 'hardware' },
  { ...mandatory('V14-54', 'Pilot valve', '188.00', { ...vexley, homeBin: 'F-02' }), class: 'hardware' },
  // For every unit
  consumable('LM-GR6', 'Grease, propeller, approved type 6', '0.09', {
    shelfLifeMonths: 36,
    minimumDaysAtBuild: 30,
    packSize: 400,
  }),
  consumable('LM-SW32', 'Safety wire 0.032 in', '0.04', {
    issueUnit: 'inch',
    packSize: 1200,
    certificateRequired: false,
  }),
  consumable('LM-SW41', 'Safety wire 0.041 in', '0.05', {
    issueUnit: 'inch',
    packSize: 1200,
    certificateRequired: false,
  }),
  consumable('LM-SL2', 'Sealant, two-part', '0.31', {
    issueUnit: 'millilitre',
    shelfLifeMonths: 12,
    minimumDaysAtBuild: 14,
    packSize: 75,
  }),
  consumable('LM-AS1', 'Anti-seize compound', '0.12', { shelfLifeMonths: 48, packSize: 225 }),
  { ...hardware('Q-SHIM-05', 'Shim, blade preload, 0.005 in', '3.90', 'B-03', 10), class: 'consumable' },
  { ...hardware('Q-SHIM-10', 'Shim, blade preload, 0.010 in', '3.90', 'B-03', 10), class: 'consumable' },
  { ...hardware('Q-BW-1', 'Static balance washer', '1.20', 'B-03', 50), class: 'consumable' },
];
