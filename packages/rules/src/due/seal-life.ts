import { addDays, addMonths, cureExpiry, endOfMonth } from '../dates/index.ts';
import { RuleError } from '../errors/index.ts';

/** How long a manual lets a seal serve: months from the day the unit was closed over it, months from its cure date, or both. */
export interface SealLife {
  readonly installedMonths: number | null;
  readonly curedMonths: number | null;
  readonly endOfMonth: boolean;
}

export interface SealDue {
  /** The last good day; null where it cannot be told. */
  readonly on: string | null;
  readonly why: string;
}

/**
 * The last good day of a fitted seal, whichever comes first. A cure date in a quarter counts from the quarter's last day, as shelf life
 * does (`cureExpiry`). Without a cure date on record nothing is told by cure, and the answer says so.
 * That a seal has an installed life besides its shelf life is common practice, no source; the manual gives the months.
 *
 * @throws RuleError no-limit without months at all
 * @example sealDue({ installedOn: '2026-01-31', cured: null }, { installedMonths: 60, curedMonths: null, endOfMonth: false }) // on 2031-01-31
 */
export function sealDue(fitted: { installedOn: string; cured: string | null }, life: SealLife): SealDue {
  const { installedMonths, curedMonths } = life;
  if (installedMonths === null && curedMonths === null)
    throw new RuleError('no-limit', 'The life of a seal is given in months installed, from cure, or both.', 'life');
  const end = (date: string) => (life.endOfMonth ? endOfMonth(date) : date);
  const installed =
    installedMonths === null
      ? []
      : [
          {
            on: end(addMonths(fitted.installedOn, installedMonths)),
            why: `${installedMonths} months from its fitting on ${fitted.installedOn}`,
          },
        ];
  const cured =
    curedMonths === null || fitted.cured === null
      ? []
      : [
          {
            // The expiry is the first day of no use.
            on: end(addDays(cureExpiry(fitted.cured, { months: curedMonths }), -1)),
            why: `${curedMonths} months from its cure, ${fitted.cured}`,
          },
        ];
  const [first] = [...installed, ...cured].sort((a, b) => (a.on < b.on ? -1 : 1));
  const unknown = curedMonths !== null && fitted.cured === null ? 'its cure date is not on record' : '';
  if (first === undefined) return { on: null, why: unknown };
  return { on: first.on, why: unknown === '' ? first.why : `${first.why}; ${unknown}` };
}
