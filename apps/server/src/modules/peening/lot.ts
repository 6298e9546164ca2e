import type { PeeningSpec } from '@hubwright/contracts/manuals/measures';
import { type Pointed, Problem } from '@hubwright/contracts/problems';
import { RuleError } from '@hubwright/rules/errors';
import { judgeLot, netArcHeight } from '@hubwright/rules/peening';
import { found, sameVersion } from '../../platform/command/version.ts';
import type { Tx } from '../../platform/database/client.ts';
import { workOrderLocks } from '../work-orders/public.ts';

/** A strip as it was entered: both readings, or only the net arc height. */
type Entered = readonly {
  readonly area: string;
  readonly arcHeight?: string | undefined;
  readonly before?: string | undefined;
  readonly after?: string | undefined;
  readonly batch?: string | undefined;
}[];
/** As it is kept, the net arc height computed. */
export type Readings = readonly (Entered[number] & { readonly arcHeight: string })[];

/** A lot with its parts that are still its own and what they ask for. */
export async function theLot(tx: Tx, lotId: string, expectedVersion: number | undefined) {
  const lot = found(
    await tx.peeningLot.findUnique({
      where: { id: lotId },
      include: { setup: { include: { machine: true } }, parts: { where: { open: true }, orderBy: { id: 'asc' } } },
    }),
    'This lot',
  );
  sameVersion(lot.version, expectedVersion);
  return { ...lot, spec: lot.areas as unknown as PeeningSpec, opening: lot.opening as unknown as Readings };
}

/** The lot itself and every work order that has a part in it. */
export async function lotLocks(tx: Tx, lotId: string): Promise<string[]> {
  const parts = await tx.peeningPart.findMany({ where: { lotId, open: true }, select: { stepId: true } });
  const stepIds = parts.map(({ stepId }) => stepId);
  return [`peening-lot:${lotId}`, ...(await workOrderLocks(tx, stepIds))];
}

/**
 * One strip for each area that is asked for and no other, with its net arc height. Throws `strips-missing`, `strip-bowed`.
 */
export function stripsOf({ areas }: PeeningSpec, readings: Entered, field: string): Readings {
  const missing = areas.filter(({ name }) => readings.filter(({ area }) => area === name).length !== 1);
  const wrong: Pointed[] = readings.flatMap(({ area }, index) =>
    areas.some(({ name }) => name === area)
      ? []
      : [{ pointer: `/${field}/${index}/area`, detail: `Nothing asks for a strip of “${area}”` }],
  );
  if (missing.length > 0)
    wrong.push({ pointer: `/${field}`, detail: `One strip each for: ${missing.map(({ name }) => name).join(', ')}` });
  const [first] = wrong;
  if (first) throw new Problem('strips-missing', first.detail, {}, wrong);
  return readings.map((reading, index) => {
    const area = areas.find(({ name }) => name === reading.area);
    return { ...reading, arcHeight: netOf(reading, area, `/${field}/${index}/before`) };
  });
}

function netOf(
  { area: name, arcHeight = '', before, after }: Entered[number],
  area: PeeningSpec['areas'][number] | undefined,
  pointer: string,
): string {
  if (before === undefined || after === undefined) return arcHeight;
  try {
    return netArcHeight({ strip: area?.strip ?? 'A', unit: area?.unit === 'mm' ? 'mm' : 'in', before, after });
  } catch (error) {
    if (!(error instanceof RuleError)) throw error;
    throw new Problem('strip-bowed', `${name}: ${error.message}`, { area: name }, [{ pointer, detail: error.message }]);
  }
}

/** Whether the strips prove the lot so far, with a reason for each that does not. Without closing strips only the opening ones count. */
export function judgeStrips({ areas }: PeeningSpec, opening: Readings, closing?: Readings) {
  const heights = (readings: Readings) =>
    Object.fromEntries(readings.map(({ area, arcHeight }) => [area, Number(arcHeight)]));
  const required = Object.fromEntries(
    areas.map(({ name, low, high }) => [name, { low: Number(low), high: Number(high) }]),
  );
  return judgeLot({ required, before: heights(opening), after: heights(closing ?? opening) });
}
