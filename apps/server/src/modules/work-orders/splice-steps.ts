import type { Chart, PeeningSpec, TapZone } from '@hubwright/contracts/manuals/measures';
import type { FormField } from '@hubwright/contracts/manuals/revision';
import type { SheetSpec } from '@hubwright/contracts/manuals/sheets';
import type { Operation } from '@hubwright/contracts/operation';
import type { Context } from '../../platform/command/command.ts';
import type { Tx } from '../../platform/database/client.ts';
import { noJson } from '../../platform/database/sql.ts';

/** A step to put on a traveler. */
export interface NewStep {
  readonly title: string;
  readonly instruction: string;
  readonly process: string;
  readonly level: string;
  readonly kind: string;
  readonly phase: string;
  readonly standardMinutes: number;
  readonly instrumentKind: string | null;
  /** Done in or with one of this kind. */
  readonly equipmentKind: string | null;
  /** Part numbers whose lot the signature names. */
  readonly materials: readonly string[];
  readonly caution: string | null;
  readonly fact: string | null;
  /** Entries of the process form, signed with the step. */
  readonly form: readonly FormField[];
  /** What it asks for where it is shot peening between strips. */
  readonly peening: PeeningSpec | null;
  /** What is written down beyond single values. */
  readonly sheet: SheetSpec | null;
  readonly branch: string | null;
  readonly waitMinutes: number;
  readonly outside: boolean;
  readonly batched: boolean;
  readonly tools: readonly string[];
  readonly attempt: number;
  readonly mostRepairs: number;
  readonly measures: readonly NewMeasure[];
}

export interface NewMeasure {
  readonly name: string;
  readonly unit: string;
  readonly decimals: number;
  readonly method: string;
  readonly low: string | null;
  readonly high: string | null;
  readonly dimension: string | null;
  readonly station: string | null;
  readonly zone: TapZone | null;
  readonly chart: Chart | null;
  /** What the limits were taken for: a diameter, an oversize step. */
  readonly basis: string | null;
}

type Writing = Pick<Context<Operation>, 'tx' | 'newId'>;

/** Puts steps on a traveler after a sequence number; later steps move back. Answers the new ids, in order. */
export async function insertSteps(
  context: Writing,
  at: { travelerId: string; after: number; findingId?: string },
  steps: readonly NewStep[],
): Promise<string[]> {
  const { tx, newId } = context;
  await moveBack(tx, { ...at, by: steps.length });
  const ids = steps.map(() => newId());
  await tx.travelerStep.createMany({
    data: steps.map(({ measures: _, tools, materials, form, peening, sheet, ...step }, index) => ({
      ...step,
      ...(peening === null ? {} : { peening }),
      ...(sheet === null ? {} : { sheet }),
      tools: [...tools],
      materials: [...materials],
      form: [...form],
      id: ids[index] ?? newId(),
      travelerId: at.travelerId,
      sequence: at.after + index + 1,
      findingId: at.findingId ?? null,
    })),
  });
  const measures = steps.flatMap((step, index) => measuresOf(context, ids[index] ?? '', step));
  await tx.stepMeasure.createMany({ data: measures });
  return ids;
}

/** Writes a revision's step over an open one: its words and limits, none of which anyone has signed. */
export async function renewStep(
  context: Writing,
  at: { id: string; sequence: number },
  { measures, tools, materials, form, peening, sheet, ...step }: NewStep,
): Promise<void> {
  const { tx } = context;
  await tx.stepMeasure.deleteMany({ where: { stepId: at.id } });
  await tx.travelerStep.update({
    where: { id: at.id },
    data: {
      ...step,
      // Left out, what an earlier revision asked for would stay.
      peening: peening ?? noJson,
      sheet: sheet ?? noJson,
      tools: [...tools],
      materials: [...materials],
      form: [...form],
      sequence: at.sequence,
    },
  });
  await tx.stepMeasure.createMany({ data: measuresOf(context, at.id, { measures }) });
}

function measuresOf({ newId }: Writing, stepId: string, step: Pick<NewStep, 'measures'>) {
  return step.measures.map(({ name, unit, decimals, method, low, high, ...more }, index) => ({
    ...{ name, unit, decimals, method, low, high },
    ...{ dimension: more.dimension, station: more.station, basis: more.basis },
    // A column of JSON is left out, not set to null: null would be a value in it.
    ...(more.zone === null ? {} : { zone: more.zone }),
    ...(more.chart === null ? {} : { chart: more.chart }),
    id: newId(),
    stepId,
    sequence: index + 1,
  }));
}

/** In two statements over negative numbers, because a sequence number is used once on a traveler at any moment. */
async function moveBack(tx: Tx, at: { travelerId: string; after: number; by: number }): Promise<void> {
  if (at.by === 0) return;
  await tx.$executeRaw`UPDATE traveler_steps SET sequence = -(sequence + ${at.by}) WHERE traveler_id = ${at.travelerId}::uuid AND sequence > ${at.after}`;
  await tx.$executeRaw`UPDATE traveler_steps SET sequence = -sequence WHERE traveler_id = ${at.travelerId}::uuid AND sequence < 0`;
}
