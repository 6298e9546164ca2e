import type { SheetOf, SheetSpec } from '@hubwright/contracts/manuals/sheets';
import { Problem } from '@hubwright/contracts/problems';
import type { Subject } from '../../platform/command/command.ts';
import type { Tx } from '../../platform/database/client.ts';
import { loadLocks, openLoad } from './loads.ts';
import { refuseInLoad, type SignedStep, stepLocks, stepToSign } from './step-signing.ts';

/** A step alone, or an open load: what the input names. */
export interface Which {
  readonly stepId?: string | undefined;
  readonly loadId?: string | undefined;
}

export interface BakeNamed {
  readonly step: SignedStep;
  readonly spec: SheetOf<'bake'>;
}

export function bakeLocks(tx: Tx, { stepId, loadId }: Which): Promise<string[]> {
  return loadId === undefined ? stepLocks(tx, stepId ?? '') : loadLocks(tx, loadId);
}

export interface Named {
  readonly load: Awaited<ReturnType<typeof openLoad>> | undefined;
  readonly first: BakeNamed;
  readonly bakes: readonly BakeNamed[];
}

/** The bakes a command is about. Throws `not-a-bake`, `load-ended`, and `in-other-load` for a part that is baked with others. */
export async function bakesNamed(tx: Tx, { stepId, loadId }: Which): Promise<Named> {
  const load = loadId === undefined ? undefined : await openLoad(tx, loadId, undefined);
  const bakes: BakeNamed[] = [];
  for (const id of load?.parts.map((part) => part.stepId) ?? [stepId ?? '']) {
    const step = await stepToSign(tx, id);
    const spec = step.sheet as SheetSpec | null;
    if (spec?.kind !== 'bake')
      throw new Problem('not-a-bake', `${step.traveler.number}: “${step.title}” is no bake`, { step: step.title });
    bakes.push({ step, spec });
  }
  if (!load)
    await refuseInLoad(
      tx,
      bakes.map(({ step }) => step),
    );
  const [first] = bakes;
  if (!first) throw new Problem('load-ended', 'Nothing is left in this load');
  return { load, first, bakes };
}

export function bakeSubjects({ load, first, bakes }: Named): [Subject, ...Subject[]] {
  const traveler = ({ step }: BakeNamed): Subject => ({ kind: 'traveler', id: step.traveler.id });
  return [traveler(first), ...bakes.slice(1).map(traveler), ...(load ? [{ kind: 'load', id: load.id }] : [])];
}
