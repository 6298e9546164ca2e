import { partWords } from '@hubwright/contracts/inventory/quantity';
import type { Held } from './held.ts';
import type { Figures } from './line-figures.ts';

/** A line as far as pieces beyond it go. */
export interface Holding {
  readonly part: { readonly number: string; readonly description: string; readonly issueUnit: string };
  readonly position: string;
  readonly quantity: number;
  readonly source: string;
  /** Its own piece went back until now, and does no more. */
  readonly turnedNew?: boolean;
}

/** Codes of the lots a line has in each place. */
export interface LotsOfLine {
  readonly tray: readonly string[];
  readonly rack: readonly string[];
  readonly unit: readonly { readonly code: string; readonly isOwn: boolean }[];
}

/** The lots of one line out of what lies in tray, rack and unit. */
export function lotsOf(lineId: string, held: Readonly<Record<'tray' | 'rack' | 'unit', readonly Held[]>>): LotsOfLine {
  const at = (place: 'tray' | 'rack' | 'unit') => held[place].filter((each) => each.lineId === lineId);
  return {
    tray: at('tray').map(({ lotCode }) => lotCode),
    rack: at('rack').map(({ lotCode }) => lotCode),
    unit: at('unit').map(({ lotCode, origin }) => ({ code: lotCode, isOwn: origin === 'taken-off' })),
  };
}

/** Pieces somewhere that their line does not ask for, with what to do about them. */
interface Surplus {
  readonly place: 'tray' | 'rack' | 'unit';
  readonly what: string;
}

/** Pieces a line has and does not ask for, each in words: what to bring back, what to decide. */
export function surplusOf(line: Holding, figures: Figures, lots: LotsOfLine): Surplus[] {
  const { inTray, installed, inRack } = figures;
  const named = (quantity: number, codes: readonly string[]) => {
    const which = codes.length > 0 ? ` (${codes.join(', ')})` : '';
    return `${partWords(quantity, line.part)} for ${line.position}${which}`;
  };
  const trayOver = Math.min(inTray, Math.max(0, inTray + installed - line.quantity));
  const unitOver = Math.max(0, installed - line.quantity);
  const wrong = lots.unit.filter(({ isOwn }) => (line.source === 'new' ? isOwn : line.source === 'reused' && !isOwn));
  const staysOff = line.turnedNew === true || line.quantity === 0;
  const found: Surplus[] = [];
  if (trayOver > 0)
    found.push({ place: 'tray', what: `${named(trayOver, lots.tray)} lies in the tray: bring it back to its bin` });
  if (unitOver > 0) {
    const codes = lots.unit.map(({ code }) => code);
    const what = `${named(unitOver, codes)} is in the unit: take it out, or have an inspector decide`;
    found.push({ place: 'unit', what });
  } else if (wrong.length > 0) {
    const codes = wrong.map(({ code }) => code);
    const takes = line.source === 'new' ? 'a new one' : 'the unit’s own';
    const what = `${named(installed, codes)} is in the unit, and the position now takes ${takes} only: take it out`;
    found.push({ place: 'unit', what });
  }
  if (staysOff && inRack > 0) {
    const what = `${named(inRack, lots.rack)} lies in the rack and does not go back: scrap it or return it to its owner`;
    found.push({ place: 'rack', what });
  }
  return found;
}
