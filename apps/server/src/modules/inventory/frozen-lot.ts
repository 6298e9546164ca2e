import { Problem } from '@hubwright/contracts/problems';
import { outTimeOf } from '@hubwright/rules/out-time';
import type { Tx } from '../../platform/database/client.ts';
import { fromDbDate } from '../../platform/database/dates.ts';

const hour = 3_600_000;

/** Time a lot was out of the freezer up to a moment, by its log in order. */
export function outTimeAt(
  moves: readonly { readonly at: Date; readonly to: string }[],
  { hours, at }: { hours: number; at: Date },
) {
  const log = moves.map(({ at: when, to }) => ({ at: when.getTime(), to: to as 'out' | 'in' }));
  return outTimeOf(log, { limit: hours * hour, at: at.getTime() });
}

/** A lot of material as a signature names it. */
export interface MaterialUsed {
  readonly id: string;
  readonly code: string;
  readonly part: string;
  readonly expiresOn: string | null;
  readonly outMinutes: number | null;
}

/**
 * The lots a step used, each good at the moment of the work: accepted, inside its freezer life, out-time not used up. Throws
 * `material-missing`, `material-wrong`, `lot-not-accepted`, `lot-expired` or `out-time-over`, each with a pointer.
 */
export async function requireMaterials(
  tx: Tx,
  { asked, lotIds }: { asked: readonly string[]; lotIds: readonly string[] },
  moment: { at: Date; day: string },
): Promise<MaterialUsed[]> {
  if (asked.length === 0 && lotIds.length === 0) return [];
  const lots = await tx.lot.findMany({ where: { id: { in: [...lotIds] } }, include: { part: true } });
  const used: MaterialUsed[] = [];
  for (const [index, id] of [...new Set(lotIds)].entries()) {
    const pointer = `/lotIds/${index}`;
    const lot = lots.find((one) => one.id === id);
    if (!lot) throw new Problem('not-found', 'There is no such lot', {}, [{ pointer, detail: 'There is no such lot' }]);
    if (!asked.includes(lot.part.number))
      throw refused(
        'material-wrong',
        `${lot.code} is ${lot.part.number}; asked for: ${asked.join(', ') || 'none'}`,
        pointer,
      );
    used.push(await goodAt(tx, lot, { ...moment, pointer }));
  }
  const missing = asked.filter((number) => !used.some(({ part }) => part === number));
  if (missing.length > 0) throw refused('material-missing', `No lot is named of: ${missing.join(', ')}`, '/lotIds');
  return used;
}

/** How long lots had been out of the freezer at a moment, whatever came of it; null for what is not kept frozen. */
export async function outTimesAt(tx: Tx, lotIds: readonly string[], at: Date) {
  const lots = await tx.lot.findMany({
    where: { id: { in: [...lotIds] } },
    include: { part: true },
    orderBy: { code: 'asc' },
  });
  const moves = await tx.freezerMove.findMany({
    where: { lotId: { in: lots.map(({ id }) => id) } },
    orderBy: [{ at: 'asc' }, { id: 'asc' }],
  });
  return lots.map(({ id, code, part: { number, outTimeHours: hours } }) => {
    const own = moves.filter(({ lotId }) => lotId === id);
    const outMinutes = hours === null ? null : Math.ceil(outTimeAt(own, { hours, at }).out / 60_000);
    return { code, part: number, outTimeHours: hours, outMinutes };
  });
}

interface LotToUse {
  readonly id: string;
  readonly code: string;
  readonly state: string;
  readonly expiresOn: Date | null;
  readonly part: { readonly number: string; readonly outTimeHours: number | null };
}

async function goodAt(
  tx: Tx,
  { id, code, state, expiresOn, part }: LotToUse,
  { at, day, pointer }: { at: Date; day: string; pointer: string },
): Promise<MaterialUsed> {
  if (state !== 'accepted') throw refused('lot-not-accepted', `${code} is ${state}`, pointer);
  const expires = expiresOn && fromDbDate(expiresOn);
  if (expires && day >= expires) throw refused('lot-expired', `${code} expired on ${expires}`, pointer);
  const used = { id, code, part: part.number, expiresOn: expires };
  if (part.outTimeHours === null) return { ...used, outMinutes: null };
  const moves = await tx.freezerMove.findMany({
    where: { lotId: id },
    orderBy: [{ at: 'asc' }, { id: 'asc' }],
    take: 2000,
  });
  const { out, isOver } = outTimeAt(moves, { hours: part.outTimeHours, at });
  const outMinutes = Math.ceil(out / 60_000);
  if (isOver)
    throw refused(
      'out-time-over',
      `${code} was out for ${outMinutes} min; ${part.outTimeHours} h are allowed`,
      pointer,
    );
  return { ...used, outMinutes };
}

function refused(
  type: 'material-wrong' | 'material-missing' | 'lot-not-accepted' | 'lot-expired' | 'out-time-over',
  detail: string,
  pointer: string,
) {
  return new Problem(type, detail, {}, [{ pointer, detail }]);
}
