import type { SheetOf } from '@hubwright/contracts/manuals/sheets';
import type { EntryOf } from '@hubwright/contracts/work-orders/sheet-entries';
import { chargeWanted } from '@hubwright/rules/charge';
import { fitProposed } from '@hubwright/rules/fit';
import { decimalsOf, passesOf, placesOf } from '@hubwright/rules/torque';

/** Every pass in the middle of its limits, no adapter on the wrench. */
export function usualTorque(spec: SheetOf<'torque'>): EntryOf<'torque'> {
  return {
    kind: 'torque',
    passes: passesOf(spec).map(({ group, title, low, high, places }) => ({
      ...{ group: group.name, pass: title, places: [...places] },
      setting: low.plus(high).div(2).toFixed(decimalsOf(group)),
    })),
    ...(spec.cycles > 0 ? { cycled: spec.cycles } : {}),
    threads: spec.groups.map(({ name }) => name),
    safetied: spec.groups.flatMap((group) => (group.safety === undefined ? [] : placesOf(group))),
  };
}

/** Read on a mild day of its table, settled as long as asked. */
export function usualCharge(spec: SheetOf<'charge'>): EntryOf<'charge'> {
  const temperature = spec.table[Math.floor(spec.table.length / 2)]?.at ?? '';
  const { wanted } = chargeWanted(spec, temperature);
  const read = { temperature, pressure: wanted, settledMinutes: String(spec.settleMinutes) };
  return { kind: 'charge', medium: spec.medium, ...read };
}

/** Each place measured in the middle of its limits, with the shims proposed for it. */
export function usualFit(spec: SheetOf<'fit'>): EntryOf<'fit'> {
  const middle = ({ low = '0', high = '0' }: { low?: string | undefined; high?: string | undefined }) =>
    ((Number(low) + Number(high)) / 2).toFixed(4);
  const measured = spec.terms.map((term) => ({ name: term.name, value: middle(term) }));
  const { pack } = fitProposed(spec, measured);
  const none = spec.shims.slice(0, 1).map(({ thickness }) => ({ thickness, pieces: 0 }));
  const shims = pack && pack.length > 0 ? [...pack] : none;
  return { kind: 'fit', places: spec.places.map((place) => ({ place, measured, shims, trial: middle(spec.trial) })) };
}
