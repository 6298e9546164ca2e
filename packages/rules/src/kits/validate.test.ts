import { describe, expect, test } from '@jest/globals';
import { close, type KitMovement, type Required } from './index.ts';

const pull: KitMovement = { part: 'A', quantity: 1, from: 'stock', to: 'tray' };
const refusing = (movements: unknown[], required: unknown[] = []) => {
  return expect(() => close({ required: required as Required[], movements: movements as KitMovement[] }));
};

describe('a movement no ledger can hold', () => {
  test.each([
    [[{ ...pull, from: 'tray', to: 'unit' }], 'more-than-held', 'movements[0].quantity'],
    [[pull, { ...pull, quantity: 2, from: 'tray', to: 'unit' }], 'more-than-held', 'movements[1].quantity'],
    [[{ ...pull, from: 'rack', to: 'unit' }], 'more-than-held', 'movements[0].quantity'],
    [[{ ...pull, from: 'scrap' }], 'more-than-held', 'movements[0].quantity'],
    [[{ ...pull, quantity: 0 }], 'bad-movement', 'movements[0].quantity'],
    [[{ ...pull, quantity: 1.5 }], 'bad-movement', 'movements[0].quantity'],
    [[{ ...pull, quantity: Number.NaN }], 'bad-movement', 'movements[0].quantity'],
    [[{ ...pull, quantity: '1' }], 'bad-movement', 'movements[0].quantity'],
    [[{ ...pull, part: '' }], 'bad-movement', 'movements[0].part'],
    [[{ ...pull, from: 'tray' }], 'bad-movement', 'movements[0].to'],
    [[{ ...pull, from: 'shelf' }], 'bad-movement', 'movements[0].from'],
    [[{ ...pull, position: ' ' }], 'bad-movement', 'movements[0].position'],
    [[null], 'bad-movement', 'movements[0].part'],
  ])('%j: %s', (movements, code, path) => {
    refusing(movements).toThrow(expect.objectContaining({ name: 'RuleError', code, path }));
  });
});

describe('a line no kit can have', () => {
  test.each([
    [{ part: 'A', quantity: -1 }, 'required[0].quantity'],
    [{ part: 'A', quantity: 1, minimum: 2 }, 'required[0].minimum'],
    [{ part: ' ', quantity: 1 }, 'required[0].part'],
    [{ part: 'A', quantity: 1, source: 'old' }, 'required[0].source'],
    [{ part: 'A', quantity: 1, acceptable: [''] }, 'required[0].acceptable'],
    [{ part: 'A', quantity: 1, position: '' }, 'required[0].position'],
  ])('%j', (line, path) => {
    refusing([], [line]).toThrow(expect.objectContaining({ name: 'RuleError', code: 'bad-kit-line', path }));
  });
});
