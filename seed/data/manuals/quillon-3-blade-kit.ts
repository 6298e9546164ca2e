// size: tables of data, one entry a line
import { line, wheneverApart } from './shapes.ts';

// Demonstration data, not for use on aircraft: every part number and quantity here is invented.
export const apart = { scopes: wheneverApart };
const balanced = [...wheneverApart, 'balance-only' as const];
const blade = { per: 'blade', scopes: wheneverApart } as const;
const reused = { source: 'reused', scopes: wheneverApart } as const;
const either = { source: 'any', scopes: wheneverApart } as const;

export const sealsAndLocks = [
  line('Q301-11', 'shank O-ring', 2, blade),
  line('Q301-12', 'piston O-ring', 1, apart),
  line('Q301-13', 'cylinder O-ring', 2, apart),
  line('Q301-14', 'pitch change rod O-ring', 2, apart),
  line('Q301-15', 'hub gasket', 1, apart),
  line('Q301-16', 'mounting face O-ring', 1, apart),
  line('Q301-31', 'hub nuts', 12, apart),
  line('Q301-33', 'pitch link cotter pin', 1, blade),
  line('Q301-34', 'mounting nut cotter pins', 6, apart),
  line('Q301-36', 'clamp nuts', 2, blade),
  line('Q301-37', 'clamp washers', 4, blade),
  line('Q301-26', 'cylinder retaining ring', 1, apart),
  line('Q301-27', 'piston snap ring', 1, apart),
  line('Q301-44', 'low pitch stop lock nut', 1, apart),
];
export const wearParts = [
  line('Q301-21', 'retention bearing balls', 26, { per: 'blade' }),
  line('Q301-23', 'pitch link needle bearing', 1, { per: 'blade' }),
  line('Q301-24', 'pitch link bushing', 2, { per: 'blade' }),
  line('Q301-25', 'fork guide blocks', 2),
  line('Q301-39', 'spinner bulkhead screws', 9),
  line('Q301-40', 'spinner washers', 9),
  line('Q301-41', 'grease fitting', 1, { per: 'blade' }),
  line('Q301-42', 'grease fitting cap', 1, { per: 'blade' }),
  line('Q301-43', 'mounting stud nuts', 6),
];
export const takenOffAndPutBack = [
  line('Q301-51', 'pitch return spring', 1, reused),
  line('Q301-32', 'hub bolts', 12, reused),
  line('Q301-35', 'clamp bolts', 2, { ...reused, per: 'blade' }),
  line('Q301-52', 'pitch change rod', 1, either),
  line('Q301-53', 'pitch link', 1, { ...either, per: 'blade' }),
  line('Q301-22', 'retention race halves', 2, { ...either, per: 'blade' }),
  line('Q301-38', 'counterweight screws', 2, { ...either, per: 'blade' }),
  line('Q301-61', 'hub', 1, either),
  line('Q301-62', 'piston', 1, either),
  line('Q301-63', 'cylinder', 1, either),
  line('Q301-64', 'clamp', 1, { ...either, per: 'blade' }),
  line('Q76-B', 'blade 1', 1, either),
  line('Q76-B', 'blade 2', 1, either),
  line('Q76-B', 'blade 3', 1, either),
];
export const asNeeded = [
  line('LM-SW41', 'safety wire', 180, { ...apart, minimum: 24 }),
  line('LM-GR6', 'grease', 450, { ...apart, minimum: 120 }),
  line('LM-AS1', 'anti-seize', 30, { ...apart, minimum: 0 }),
  line('LM-SL2', 'sealant', 20, { ...apart, minimum: 0 }),
  line('Q-SHIM-05', 'preload shims 0.005', 3, { minimum: 0, per: 'blade' }),
  line('Q-SHIM-10', 'preload shims 0.010', 3, { minimum: 0, per: 'blade' }),
  line('Q-BW-1', 'static balance washers', 18, { scopes: balanced, minimum: 0 }),
];
