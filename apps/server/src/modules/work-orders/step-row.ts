import type { Reply } from '@hubwright/contracts/operation';
import type { BakeClock } from '@hubwright/contracts/work-orders/bake-shapes';
import type { travelerOperations } from '@hubwright/contracts/work-orders/traveler-operations';
import { fromDbDate } from '../../platform/database/dates.ts';
import { drawnOf } from './sheets/drawn.ts';
import type { JudgedSheet } from './sheets/sheet.ts';
import { type Block, blockOf } from './step-block.ts';
import type { TurnRow } from './turn.ts';

type StepReply = Reply<typeof travelerOperations.traveler>['steps'][number];
type SignOffReply = StepReply['signOffs'][number];

interface SignOffStored {
  readonly id: string;
  readonly meaning: string;
  readonly result: string;
  readonly personId: string;
  readonly authorisation: unknown;
  readonly revisionId: string;
  readonly instrumentId: string | null;
  readonly performedAt: Date;
  readonly signedAt: Date;
  readonly lateReason: string | null;
  readonly content: string;
  readonly contentHash: string;
  readonly supersedesId: string | null;
  readonly countersignsId: string | null;
  readonly measurements: readonly { measureId: string; value: string; compared: string; pass: boolean }[];
}

type StepStored = Omit<
  StepReply,
  | 'process'
  | 'level'
  | 'kind'
  | 'phase'
  | 'state'
  | 'fact'
  | 'instrumentKind'
  | 'equipmentKind'
  | 'blocked'
  | 'measures'
  | 'signOffs'
  | 'waitUntil'
  | 'form'
  | 'peening'
  | 'sheet'
  | 'bake'
> & {
  readonly sheet: unknown;
  readonly peening: unknown;
  readonly form: unknown;
  readonly waitUntil: Date | null;
  readonly process: string;
  readonly level: string;
  readonly kind: string;
  readonly phase: string;
  readonly state: string;
  readonly fact: string | null;
  readonly instrumentKind: string | null;
  readonly equipmentKind: string | null;
  readonly measures: readonly { readonly id: string }[];
  readonly signOffs: readonly SignOffStored[];
};

/** People, instruments and revisions named by the signatures of a traveler. */
export interface Signers {
  readonly people: ReadonlyMap<string, SignOffReply['person']>;
  readonly instruments: ReadonlyMap<string, { id: string; tag: string; title: string; calibrationDueOn: Date }>;
  readonly revisions: ReadonlyMap<string, string>;
}

/** A step as the contract shows it: measures with limits, and every signature, superseded ones too. */
export function stepRow(
  step: StepStored,
  {
    turns,
    clocks,
    now,
    people,
  }: { turns: readonly TurnRow[]; clocks: ReadonlyMap<string, BakeClock>; now: Date; people: Signers },
): StepReply {
  return {
    ...(step as unknown as StepReply),
    bake: clocks.get(step.id) ?? null,
    blocked: blockedNow(step, { turns, now }) ?? null,
    waitUntil: step.waitUntil?.toISOString() ?? null,
    measures: step.measures as StepReply['measures'],
    signOffs: step.signOffs.map((signOff) => signOffReply(signOff, { all: step.signOffs, people })),
  };
}

function blockedNow(
  step: { id: string; state: string },
  { turns, now }: { turns: readonly TurnRow[]; now: Date },
): Block | undefined {
  const [first] = turns;
  if (step.state !== 'open' || !first) return undefined;
  const turn = turns.find(({ step_id }) => step_id === step.id);
  if (turn) return blockOf(turn, now);
  return { problem: 'step-out-of-order', detail: `“${first.title}” comes first` };
}

function supervisorOf(
  { id }: SignOffStored,
  { all, people }: { all: readonly SignOffStored[]; people: Signers },
): SignOffReply['supervisor'] {
  const beside = all.find(({ countersignsId }) => countersignsId === id);
  return (beside && people.people.get(beside.personId)) ?? null;
}

function signOffReply(
  row: SignOffStored,
  { all, people }: { all: readonly SignOffStored[]; people: Signers },
): SignOffReply {
  const { process, level } = row.authorisation as { process?: string; level?: string };
  const instrument = row.instrumentId === null ? undefined : people.instruments.get(row.instrumentId);
  return {
    id: row.id,
    meaning: row.meaning,
    result: row.result === 'fail' ? 'fail' : 'pass',
    person: people.people.get(row.personId) ?? { id: row.personId, displayName: 'Unknown person', initials: '?' },
    authorisation: { process: process ?? '', level: level ?? '' },
    revision: people.revisions.get(row.revisionId) ?? '',
    instrument: instrument
      ? {
          id: instrument.id,
          tag: instrument.tag,
          title: instrument.title,
          calibrationDueOn: fromDbDate(instrument.calibrationDueOn),
        }
      : null,
    performedAt: row.performedAt.toISOString(),
    signedAt: row.signedAt.toISOString(),
    lateReason: row.lateReason,
    contentHash: row.contentHash,
    supersedesId: row.supersedesId,
    supersededById: all.find((other) => other.supersedesId === (row.countersignsId ?? row.id))?.id ?? null,
    countersignsId: row.countersignsId,
    supervisor: supervisorOf(row, { all, people }),
    values: row.measurements.map(({ measureId, value, compared, pass }) => ({ measureId, value, compared, pass })),
    ...entriesOf(row.content),
  };
}

/** What was written down beside values, read from what was signed. */
function entriesOf(content: string): Pick<SignOffReply, 'form' | 'sheet' | 'equipment' | 'lots'> {
  const { form, sheet, equipment, lots } = JSON.parse(content) as Partial<Pick<SignOffReply, 'form'>> & {
    readonly sheet?: Pick<JudgedSheet, 'kind' | 'said' | 'reasons' | 'spec' | 'entry' | 'verdict'>;
    readonly equipment?: { code: string; title: string };
    readonly lots?: readonly { code: string; part: string }[];
  };
  return {
    form: form ?? [],
    sheet: sheet
      ? {
          ...{ kind: sheet.kind, said: [...sheet.said], reasons: [...sheet.reasons] },
          drawn: drawnOf(sheet),
        }
      : null,
    equipment: equipment ? `${equipment.code} ${equipment.title}` : null,
    lots: (lots ?? []).map(({ code, part }) => `${part}, ${code}`),
  };
}
