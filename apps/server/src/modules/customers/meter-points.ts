import { Problem } from '@hubwright/contracts/problems';
import type { MeterPoint } from '@hubwright/rules/times';
import type { Tx } from '../../platform/database/client.ts';
import { faultWords, MeterFacts, type Statement } from './meter-facts.ts';

/** Refuses figures that this meter of this aircraft cannot have shown, by every reading, installation and change on record. */
export async function refuseOutOfLine(tx: Tx, statement: Statement): Promise<void> {
  const fault = (await MeterFacts.of(tx, [statement.aircraftId])).fault(statement);
  if (!fault) return;
  const detail = faultWords(fault, statement.meter);
  throw new Problem('reading-out-of-line', detail, {}, [{ pointer: pointerOf(fault.said, statement), detail }]);
}

/** What a meter will show nobody has read. */
export function refuseFuture(day: string, today: string, pointer: string): void {
  if (day <= today) return;
  const detail = `${day} is still to come`;
  throw new Problem('reading-out-of-line', detail, {}, [{ pointer, detail }]);
}

function pointerOf({ on, tenths, what }: MeterPoint, { said }: Statement): string {
  if (what === 'the old meter') return '/oldTenths';
  if (what === 'the new meter') return '/newTenths';
  return said.find((one) => one.on === on && one.tenths === tenths)?.pointer ?? '';
}
