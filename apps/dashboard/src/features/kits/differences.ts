import type { Kit, KitLine, TrayLot } from './kit-detail.ts';

/** One thing to do so that the tray is what the list asks for now. */
export interface Difference {
  readonly key: string;
  readonly what: 'bring back' | 'pull';
  readonly line: KitLine;
  readonly quantity: number;
  /** The lot to bring back. */
  readonly lot: TrayLot | undefined;
}

/**
 * What lies in the tray beyond what its line asks for, lot by lot, newest lot last in first out; and what is still to be pulled:
 * all of it once anything is too much, else what was asked for after the pulling had begun. Empty where the list is as it was
 * pulled by: then the pull list says it all.
 */
export function trayDifferences(kit: Kit): readonly Difference[] {
  const back = kit.lines.flatMap((line) => {
    let over = Math.min(line.inTray, Math.max(0, line.inTray + line.installed - line.quantity));
    const lots = kit.tray.filter(({ lineId }) => lineId === line.id).toReversed();
    return lots.flatMap((lot) => {
      const quantity = Math.min(over, lot.quantity);
      over -= quantity;
      return quantity > 0 ? [{ key: `${line.id} ${lot.lotId}`, what: 'bring back' as const, line, quantity, lot }] : [];
    });
  });
  const isBegun = kit.lines.some((line) => line.inTray > 0 || (line.source !== 'reused' && line.installed > 0));
  const pull = kit.lines
    .filter(({ toPull, askedLaterAt }) => toPull > 0 && (back.length > 0 || (isBegun && askedLaterAt !== null)))
    .map((line) => ({ key: line.id, what: 'pull' as const, line, quantity: line.toPull, lot: undefined }));
  return [...back, ...pull];
}
