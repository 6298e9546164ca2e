import { sealDue, storageCount } from '@hubwright/rules/due';
import type { FittedSeal, Kept, LimitSource } from './source.ts';

/** What comes of storage and of seals: each with a day of its own. */
export function keepingSources(
  { paper, storage, storage_rules: rules, seals }: Kept,
  { fitted, asOf }: { fitted: readonly FittedSeal[]; asOf: string },
): { limits: LimitSource[]; notes: string[] } {
  const lying = storageCount(storage, { rules, since: asOf, asOf });
  const inspection: LimitSource[] =
    lying.inspectBy === null
      ? []
      : [
          {
            ...{ kind: 'calendar', what: `longest storage without an inspection, ${paper}`, requirement: 'required' },
            ...{ on: lying.inspectBy, left: null },
            says: `In storage it is to be inspected by ${lying.inspectBy}.`,
          },
        ];
  const told = seals.map((life) => sealSource(life, { paper, fitted }));
  return {
    limits: [...inspection, ...told.flatMap(({ limit }) => limit ?? [])],
    notes: told.flatMap(({ note }) => note ?? []),
  };
}

function sealSource(
  life: Kept['seals'][number],
  { paper, fitted }: { paper: string | null; fitted: readonly FittedSeal[] },
): { limit?: LimitSource; note?: string } {
  const seal = fitted.find(({ part_number }) => part_number === life.partNumber);
  if (!seal) return { note: `Seal ${life.partNumber}: no fitting is on record here, so its life is not told.` };
  const { on, why } = sealDue({ installedOn: seal.installed_on, cured: seal.cured }, life);
  if (on === null) return { note: `Seal ${life.partNumber}: ${why}.` };
  const what = `life of seal ${life.partNumber}, ${paper}`;
  const says = `Seal ${life.partNumber} is good to ${on}: ${why}.`;
  return { limit: { kind: 'calendar', what, requirement: life.requirement, on, left: null, says } };
}
