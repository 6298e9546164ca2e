import type { Decimal } from 'decimal.js';
import { Exact } from '../reading/index.ts';

export const torqueUnits = ['in-lb', 'ft-lb', 'N-m'] as const;
export type TorqueUnit = (typeof torqueUnits)[number];

/** Nuts or bolts of one kind, as the manual tightens them. Torque at the nut, bounds inclusive. */
export interface TorqueGroup {
  readonly name: string;
  readonly count: number;
  /** The sequence by number, such as crosswise; by number where it is left out. */
  readonly order?: readonly number[] | undefined;
  readonly low: string;
  readonly high: string;
  /** Percent of the torque, one pass over all places after the other; the last is the whole. */
  readonly passes: readonly string[];
  /** What the threads have to be: dry, or with what on them. */
  readonly threads: string;
  /** Tightened once more after cycling. */
  readonly retorque: boolean;
  readonly safety?: string | undefined;
}

/** A torque sheet as the revision has it. One wrench, so one unit. */
export interface TorqueSpec {
  readonly unit: TorqueUnit;
  readonly lengthUnit: string;
  /** How often it is cycled before anything is torqued again; 0 where nothing is. */
  readonly cycles: number;
  readonly groups: readonly TorqueGroup[];
}

/** One pass over the places of a group, in the order the work is done. */
export interface Pass {
  readonly group: TorqueGroup;
  /** `50 %`, or `again after cycling`. */
  readonly title: string;
  readonly afterCycling: boolean;
  readonly low: Decimal;
  readonly high: Decimal;
  readonly places: readonly string[];
}

/** The places of a group in their sequence: `hub nut 1`, `hub nut 5`, …; one alone has no number. */
export function placesOf({ name, count, order }: TorqueGroup): string[] {
  if (count === 1) return [name];
  return (order ?? Array.from({ length: count }, (_, index) => index + 1)).map((number) => `${name} ${number}`);
}

/**
 * All passes in the sequence of the manual: group by group, pass by pass, and after cycling once more where the group asks for it.
 *
 * @example one nut at 50 and 100 %, torqued again → 50 %, 100 %, again after cycling
 */
export function passesOf({ groups }: TorqueSpec): Pass[] {
  const all = groups.map((group) => ({ group, places: placesOf(group) }));
  const pass = ({ group, places }: (typeof all)[number], percent: string, title?: string): Pass => {
    const share = new Exact(percent).div(100);
    return {
      ...{ group, title: title ?? `${percent} %`, afterCycling: title !== undefined, places },
      ...{ low: new Exact(group.low).times(share), high: new Exact(group.high).times(share) },
    };
  };
  return [
    ...all.flatMap((one) => one.group.passes.map((percent) => pass(one, percent))),
    ...all.filter(({ group }) => group.retorque).map((one) => pass(one, '100', 'again after cycling')),
  ];
}

/** Decimals a setting is shown with: one more than the limits have. */
export function decimalsOf({ low, high }: Pick<TorqueGroup, 'low' | 'high'>): number {
  return 1 + Math.max(...[low, high].map((text) => text.split('.')[1]?.length ?? 0));
}
