import { isStaticBalance } from '@hubwright/contracts/manuals/static-balance-sheet';
import type { Operation } from '@hubwright/contracts/operation';
import type { Context } from '../../platform/command/command.ts';
import type { Tx } from '../../platform/database/client.ts';
import { openClosedBuild } from './open-closed-build.ts';
import { insertSteps } from './splice-steps.ts';
import { stepAgain } from './step-again.ts';
import { isInspection } from './step-signing.ts';

type Deciding = Pick<Context<Operation>, 'tx' | 'now' | 'newId'>;

/** What came back on a traveler. */
export interface CameBack {
  readonly id: string;
  readonly before: number;
  readonly titles: readonly string[];
}

/**
 * Paint put on after the static balance undoes it: the balance comes back behind what is signed, and with it every inspection that was
 * signed on its strength. A closed build opens, since weights come through the kit. Nothing happens where no balance is signed yet.
 * Call under the locks of the work order and its kits.
 */
export async function balanceAgain(
  context: Deciding,
  workOrder: { readonly id: string },
  because: string,
): Promise<CameBack[]> {
  const travelers = await travelersOf(context.tx, workOrder.id);
  const back: CameBack[] = [];
  for (const { id, version, steps } of travelers) {
    const last = steps.findLast(({ sheet, state }) => isStaticBalance(sheetOf(sheet)) && state !== 'not-needed');
    if (last?.state !== 'signed') continue;
    const again = steps.filter(
      (step) =>
        step.state === 'signed' && (step.id === last.id || (step.sequence > last.sequence && isInspection(step))),
    );
    const after = Math.max(...steps.filter(({ state }) => state !== 'open').map(({ sequence }) => sequence));
    const laid = again.map((step) => stepAgain(step, because));
    await insertSteps(context, { travelerId: id, after }, laid);
    await context.tx.traveler.update({ where: { id }, data: { version: { increment: 1 } } });
    back.push({ id, before: version, titles: laid.map(({ title }) => title) });
    if (last.phase !== 'final') await openClosedBuild(context, workOrder.id);
  }
  return back;
}

function sheetOf(sheet: unknown): { readonly kind: string } | null {
  return sheet as { kind: string } | null;
}

function travelersOf(tx: Tx, workOrderId: string) {
  return tx.traveler.findMany({
    where: { workOrderId, partClass: 'assembly', OR: [{ disposition: null }, { disposition: { not: 'reject' } }] },
    orderBy: { number: 'asc' },
    include: {
      steps: { orderBy: { sequence: 'asc' }, include: { measures: { orderBy: { sequence: 'asc' } } } },
    },
  });
}
