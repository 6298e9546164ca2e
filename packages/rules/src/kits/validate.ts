import { RuleError } from '../errors/index.ts';
import type { KitMovement, Required } from './shapes.ts';

const PLACES = new Set(['stock', 'tray', 'rack', 'unit', 'scrap', 'customer']);
const SOURCES = new Set(['new', 'reused', 'any']);

export function refuseBadLines(required: Required[]): void {
  if (!Array.isArray(required)) throw new RuleError('bad-kit-line', 'The required lines are a list.', 'required');
  required.forEach((line, index) => {
    const refuse = (field: string, why: string): never => {
      throw new RuleError('bad-kit-line', why, `required[${index}].${field}`);
    };
    if (!isName(line?.part)) refuse('part', 'A kit line names its part.');
    if (!isCount(line.quantity)) refuse('quantity', 'A quantity is a whole number, zero or more.');
    if (line.minimum !== undefined && (!isCount(line.minimum) || line.minimum > line.quantity))
      refuse('minimum', 'The least is a whole number not above the most.');
    if (line.position !== undefined && !isName(line.position)) refuse('position', 'A position has a name.');
    if (line.source !== undefined && !SOURCES.has(line.source)) refuse('source', 'A source is new, reused or any.');
    if (line.acceptable !== undefined && !(Array.isArray(line.acceptable) && line.acceptable.every(isName)))
      refuse('acceptable', 'Alternates are a list of part numbers.');
  });
}

export function refuseBadMovements(movements: KitMovement[]): void {
  if (!Array.isArray(movements)) throw new RuleError('bad-movement', 'The movements are a list.', 'movements');
  movements.forEach((movement, index) => {
    const refuse = (field: string, why: string): never => {
      throw new RuleError('bad-movement', why, `movements[${index}].${field}`);
    };
    if (!isName(movement?.part)) refuse('part', 'A movement names its part.');
    if (!isCount(movement.quantity) || movement.quantity === 0)
      refuse('quantity', 'A movement moves a whole number of pieces, one or more.');
    if (!PLACES.has(movement.from)) refuse('from', 'This is no place a part can come from.');
    if (!PLACES.has(movement.to)) refuse('to', 'This is no place a part can go to.');
    if (movement.from === movement.to) refuse('to', 'A movement ends at another place than it began.');
    if (movement.position !== undefined && !isName(movement.position)) refuse('position', 'A position has a name.');
  });
}

function isName(value: unknown): value is string {
  return typeof value === 'string' && value.trim() !== '';
}

function isCount(value: unknown): value is number {
  return Number.isSafeInteger(value) && (value as number) >= 0;
}
