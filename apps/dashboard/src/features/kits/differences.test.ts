import { describe, expect, it } from '@jest/globals';
import { trayDifferences } from './differences.ts';
import type { Kit, KitLine, TrayLot } from './kit-detail.ts';

const line = (id: string, more: Partial<KitLine>) =>
  ({ id, quantity: 0, inTray: 0, installed: 0, toPull: 0, askedLaterAt: null, ...more }) as KitLine;
const lot = (lotId: string, lineId: string, quantity: number) => ({ lotId, lineId, quantity }) as TrayLot;
const said = (kit: Partial<Kit>) =>
  trayDifferences(kit as Kit).map((row) => [row.what, row.line.id, row.lot?.lotId, row.quantity]);

describe('the list changes under the tray', () => {
  it('brings back what is too much, newest lot first, and pulls what is new', () => {
    const lines = [
      line('seal', { quantity: 1, inTray: 4 }),
      line('gone', { quantity: 0, inTray: 1 }),
      line('new', { quantity: 2, toPull: 2 }),
      line('same', { quantity: 1, inTray: 1 }),
    ];
    const tray = [lot('old', 'seal', 2), lot('young', 'seal', 2), lot('g', 'gone', 1), lot('s', 'same', 1)];
    expect(said({ lines, tray })).toEqual([
      ['bring back', 'seal', 'young', 2],
      ['bring back', 'seal', 'old', 1],
      ['bring back', 'gone', 'g', 1],
      ['pull', 'new', undefined, 2],
    ]);
  });

  it('counts what is in the unit already, and never asks the tray for pieces that are not in it', () => {
    const lines = [line('a', { quantity: 2, installed: 2, inTray: 1 }), line('b', { quantity: 0, installed: 3 })];
    expect(said({ lines, tray: [lot('x', 'a', 1)] })).toEqual([['bring back', 'a', 'x', 1]]);
  });

  it('pulls what a scope or a finding asked for once pulling had begun, and nothing of the first list', () => {
    const later = { toPull: 1, askedLaterAt: '2026-11-20T09:00:00.000Z' };
    const lines = [line('first', { toPull: 2 }), line('later', later)];
    expect(said({ lines, tray: [] })).toEqual([]);
    const begun = [...lines, line('pulled', { quantity: 1, inTray: 1 })];
    expect(said({ lines: begun, tray: [lot('p', 'pulled', 1)] })).toEqual([['pull', 'later', undefined, 1]]);
  });

  it('says nothing while the tray holds no more than it should: then the pull list says it all', () => {
    expect(said({ lines: [line('a', { quantity: 2, inTray: 1, toPull: 1 })], tray: [lot('x', 'a', 1)] })).toEqual([]);
  });
});
