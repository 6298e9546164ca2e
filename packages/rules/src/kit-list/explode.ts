import { RuleError } from '../errors/index.ts';
import { serialInRange } from './serial-range.ts';

/** A line of a manual's parts list. Quantities are integers in the part's smallest issue unit. */
export type ListLine = {
  id: string;
  partId: string;
  position: string;
  scopes: readonly string[];
  per: 'unit' | 'blade';
  /** For an as-needed line the most that may be used. */
  quantity: number;
  /** As needed: the least (0 allowed). */
  minimum?: number;
  source: 'new' | 'reused' | 'any';
  serialFrom?: string;
  serialTo?: string;
};

/** What one position of this unit needs. */
export type ExplodedLine = {
  listLineId: string;
  partId: string;
  position: string;
  quantity: number;
  minimum?: number;
  source: 'new' | 'reused' | 'any';
};

export type ExplodedKitList = {
  lines: ExplodedLine[];
  /** Lines of a serial range that cannot be decided while the unit's serial is not read. Never guessed. */
  undecided: ListLine[];
};

/**
 * The kit list of this unit: lines of the scope whose serial range holds it, those per blade once for each blade
 * (`clamp bolts` → `blade 1 clamp bolts`, …), in the order of the list.
 *
 * Errors: RuleError `bad-blade-count` when a line is per blade and the unit has none, `bad-quantity`, and `bad-range`.
 *
 * @example explodeKitList([{ id: 'l1', partId: 'p', position: 'O-ring', scopes: ['reseal'], per: 'blade', quantity: 2, source: 'new' }],
 *   { scope: 'reseal', serial: 'QG1042', bladeCount: 3 }).lines.map((line) => line.position) // ['blade 1 O-ring', 'blade 2 O-ring', 'blade 3 O-ring']
 */
export function explodeKitList(
  list: readonly ListLine[],
  unit: { scope: string; serial: string | null; bladeCount: number },
): ExplodedKitList {
  if (!Number.isInteger(unit.bladeCount) || unit.bladeCount < 0)
    throw new RuleError('bad-blade-count', 'The number of blades is a whole number', 'bladeCount');
  const exploded: ExplodedKitList = { lines: [], undecided: [] };
  for (const line of list) {
    refuseBadQuantity(line);
    if (!line.scopes.includes(unit.scope)) continue;
    const effective = effectivity(line, unit.serial);
    if (effective === 'undecided') exploded.undecided.push(line);
    if (effective === 'yes') exploded.lines.push(...perBlade(line, unit.bladeCount));
  }
  return exploded;
}

function effectivity(line: ListLine, serial: string | null): 'yes' | 'no' | 'undecided' {
  const { serialFrom, serialTo } = line;
  if (serialFrom === undefined && serialTo === undefined) return 'yes';
  if (serial === null) return 'undecided';
  const range = {
    ...(serialFrom === undefined ? {} : { from: serialFrom }),
    ...(serialTo === undefined ? {} : { to: serialTo }),
  };
  return serialInRange(serial, range) ? 'yes' : 'no';
}

function perBlade(line: ListLine, bladeCount: number): ExplodedLine[] {
  const { id: listLineId, partId, quantity, source } = line;
  const needed = {
    listLineId,
    partId,
    quantity,
    source,
    ...(line.minimum === undefined ? {} : { minimum: line.minimum }),
  };
  if (line.per === 'unit') return [{ ...needed, position: line.position }];
  if (bladeCount === 0)
    throw new RuleError('bad-blade-count', `${line.position} is per blade, but this unit has no blades`, 'bladeCount');
  return Array.from({ length: bladeCount }, (_, index) => ({
    ...needed,
    position: `blade ${index + 1} ${line.position}`,
  }));
}

function refuseBadQuantity(line: ListLine): void {
  if (!Number.isInteger(line.quantity) || line.quantity < 1)
    throw new RuleError(
      'bad-quantity',
      `${line.position} asks for ${line.quantity}: give at least one whole piece`,
      'quantity',
    );
  const { minimum } = line;
  if (minimum !== undefined && (!Number.isInteger(minimum) || minimum < 0 || minimum > line.quantity))
    throw new RuleError('bad-quantity', `${line.position}: the least must lie between none and the most`, 'minimum');
}
