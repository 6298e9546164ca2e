// size: the two tables that move a work order are read side by side
import { z } from 'zod';
import type { Role } from '../roles.ts';

/** Where the work on a unit is. */
export const stages = [
  'received',
  'teardown',
  'inspected',
  'in-work',
  'build',
  'final-inspection',
  'released',
  'shipped',
  'closed',
  'returning-unrepaired',
  'scrapped',
] as const;
export const stageSchema = z.enum(stages).meta({ id: 'Stage' });
export type Stage = (typeof stages)[number];

export const stageTitles: Record<Stage, string> = {
  received: 'Received',
  teardown: 'Teardown',
  inspected: 'Inspected',
  'in-work': 'In work',
  build: 'Build-up',
  'final-inspection': 'Final inspection',
  released: 'Approved for return to service',
  shipped: 'Shipped',
  closed: 'Closed',
  'returning-unrepaired': 'Going back unrepaired',
  scrapped: 'Scrapped',
};

/** What was offered to the customer and what they answered. */
export const consents = [
  'estimate-due',
  'estimate-sent',
  'estimate-silent',
  'evaluation-approved',
  'quote-due',
  'quote-sent',
  'quote-silent',
  'approved',
  'declined',
] as const;
export const consentSchema = z.enum(consents).meta({ id: 'Consent' });
export type Consent = (typeof consents)[number];

export const consentTitles: Record<Consent, string> = {
  'estimate-due': 'Estimate to write',
  'estimate-sent': 'Estimate with the customer',
  'estimate-silent': 'No answer to the estimate',
  'evaluation-approved': 'Evaluation approved',
  'quote-due': 'Quote to write',
  'quote-sent': 'Quote with the customer',
  'quote-silent': 'No answer to the quote',
  approved: 'Approved',
  declined: 'Declined',
};

/** One way from state to state, and who may take it. */
export interface Move<S, A> {
  readonly from: S;
  readonly action: A;
  readonly to: S;
  readonly roles: readonly Role[];
}

const desk: readonly Role[] = ['front-desk', 'manager'];
const inspectors: readonly Role[] = ['inspector'];
const bench: readonly Role[] = ['technician', 'inspector'];

function moves<S extends string, A extends string>(
  action: A,
  roles: readonly Role[],
  ways: readonly (readonly [from: S, to: S])[],
): Move<S, A>[] {
  return ways.map(([from, to]) => ({ from, action, to, roles }));
}

/** What moves a work order. An action named in both tables moves both or neither. */
export const actions = [
  'send-estimate',
  'approve-evaluation',
  'start-teardown',
  'declare-inspected',
  'send-quote',
  'approve-quote',
  'record-silence',
  'decline-return',
  'decline-purchase',
  'decline-scrap',
  'start-build',
  'close-build',
  'reopen-build',
  'approve-return-to-service',
  'return-unrepaired',
  'change-scope',
  'ship',
  'close',
] as const;
export const actionSchema = z.enum(actions).meta({ id: 'WorkOrderAction' });
export type Action = (typeof actions)[number];

/** Money and consent: state × action → state, with who may act. */
export const consentTable: readonly Move<Consent, Action>[] = [
  ...moves<Consent, Action>('send-estimate', desk, [
    ['estimate-due', 'estimate-sent'],
    ['estimate-sent', 'estimate-sent'],
    ['estimate-silent', 'estimate-sent'],
  ]),
  ...moves<Consent, Action>('approve-evaluation', desk, [
    ['estimate-sent', 'evaluation-approved'],
    ['estimate-silent', 'evaluation-approved'],
  ]),
  ...moves<Consent, Action>('start-teardown', bench, [['evaluation-approved', 'evaluation-approved']]),
  ...moves<Consent, Action>('declare-inspected', bench, [['evaluation-approved', 'quote-due']]),
  ...moves<Consent, Action>('send-quote', desk, [
    ['quote-due', 'quote-sent'],
    ['quote-sent', 'quote-sent'],
    ['quote-silent', 'quote-sent'],
  ]),
  ...moves<Consent, Action>('approve-quote', desk, [
    ['quote-sent', 'approved'],
    ['quote-silent', 'approved'],
  ]),
  ...moves<Consent, Action>('record-silence', desk, [
    ['estimate-sent', 'estimate-silent'],
    ['quote-sent', 'quote-silent'],
  ]),
  ...(['decline-return', 'decline-purchase', 'decline-scrap'] as const).flatMap((action) =>
    moves<Consent, Action>(action, desk, [
      ['estimate-sent', 'declined'],
      ['estimate-silent', 'declined'],
      ['quote-sent', 'declined'],
      ['quote-silent', 'declined'],
    ]),
  ),
  // The customer takes the unit back although work was agreed: what was found later is not wanted.
  ...moves<Consent, Action>('return-unrepaired', desk, [['approved', 'declined']]),
  // What was offered or agreed was another work: the evaluation goes on under its cap, all else is offered anew.
  ...moves<Consent, Action>('change-scope', inspectors, [
    ['estimate-due', 'estimate-due'],
    ['estimate-sent', 'estimate-due'],
    ['estimate-silent', 'estimate-due'],
    ['evaluation-approved', 'evaluation-approved'],
    ['quote-due', 'quote-due'],
    ['quote-sent', 'quote-due'],
    ['quote-silent', 'quote-due'],
    ['approved', 'quote-due'],
  ]),
];

/** The work: state × action → state, with who may act. */
export const stageTable: readonly Move<Stage, Action>[] = [
  ...moves<Stage, Action>('start-teardown', bench, [['received', 'teardown']]),
  ...moves<Stage, Action>('declare-inspected', bench, [['teardown', 'inspected']]),
  ...moves<Stage, Action>('approve-quote', desk, [['inspected', 'in-work']]),
  ...moves<Stage, Action>('decline-return', desk, [
    ['received', 'returning-unrepaired'],
    ['inspected', 'returning-unrepaired'],
  ]),
  ...moves<Stage, Action>('return-unrepaired', desk, [
    ['in-work', 'returning-unrepaired'],
    ['build', 'returning-unrepaired'],
    ['final-inspection', 'returning-unrepaired'],
  ]),
  // The shop buys the unit: this visit is over.
  ...moves<Stage, Action>('decline-purchase', desk, [
    ['received', 'closed'],
    ['inspected', 'closed'],
  ]),
  ...moves<Stage, Action>('decline-scrap', desk, [
    ['received', 'scrapped'],
    ['inspected', 'scrapped'],
  ]),
  ...moves<Stage, Action>('start-build', bench, [['in-work', 'build']]),
  ...moves<Stage, Action>('close-build', bench, [
    ['build', 'final-inspection'],
    // After a change of scope there may be nothing left to build: the build is closed as it stands.
    ['in-work', 'final-inspection'],
  ]),
  // A touch-up is signed by whoever did it; a finding that opens a build is the inspector's.
  ...moves<Stage, Action>('reopen-build', bench, [['final-inspection', 'build']]),
  ...moves<Stage, Action>('change-scope', inspectors, [
    ['received', 'received'],
    ['teardown', 'teardown'],
    ['inspected', 'inspected'],
    ['in-work', 'inspected'],
    ['build', 'inspected'],
    ['final-inspection', 'inspected'],
  ]),
  ...moves<Stage, Action>('approve-return-to-service', inspectors, [['final-inspection', 'released']]),
  ...moves<Stage, Action>('ship', desk, [
    ['released', 'shipped'],
    ['returning-unrepaired', 'shipped'],
  ]),
  ...moves<Stage, Action>('close', desk, [
    ['shipped', 'closed'],
    ['scrapped', 'closed'],
  ]),
];

/** Where an action leads from here, or undefined where it is not possible. */
export function next<S>(table: readonly Move<S, Action>[], from: S, action: Action): Move<S, Action> | undefined {
  return table.find((move) => move.from === from && move.action === action);
}

/** Whether an action is possible in this pair of states: in every table that knows the action. */
export function isPossible(state: { stage: Stage; consent: Consent }, action: Action): boolean {
  const known = (table: readonly Move<string, Action>[]) => table.some((move) => move.action === action);
  return (
    (!known(stageTable) || next(stageTable, state.stage, action) !== undefined) &&
    (!known(consentTable) || next(consentTable, state.consent, action) !== undefined)
  );
}

/** Roles that can take the unit a step on: by whatever is possible here but a no, silence or going back. */
export function movesOn(state: { stage: Stage; consent: Consent }): Role[] {
  const possible = actions.filter((action) => !awayFromRelease.has(action) && isPossible(state, action));
  const ways = possible.flatMap((action) => [
    ...(next(stageTable, state.stage, action)?.roles ?? []),
    ...(next(consentTable, state.consent, action)?.roles ?? []),
  ]);
  return [...new Set(ways)];
}

const awayFromRelease: ReadonlySet<Action> = new Set<Action>([
  'decline-return',
  'decline-purchase',
  'decline-scrap',
  'return-unrepaired',
  'record-silence',
  'reopen-build',
  'change-scope',
]);

/** Who must act next. */
export const ballHolders = [
  'front-desk',
  'parts-room',
  'technician',
  'inspector',
  'manager',
  'customer',
  'nobody',
] as const;
export const ballHolder = z.enum(ballHolders).meta({ id: 'BallHolder' });
export type BallHolder = (typeof ballHolders)[number];

const byConsent: Partial<Record<Consent, BallHolder>> = {
  'estimate-due': 'front-desk',
  'estimate-sent': 'customer',
  'estimate-silent': 'front-desk',
  'quote-due': 'front-desk',
  'quote-sent': 'customer',
  'quote-silent': 'front-desk',
};
const byStage: Record<Stage, BallHolder> = {
  received: 'technician',
  teardown: 'technician',
  inspected: 'front-desk',
  'in-work': 'technician',
  build: 'technician',
  'final-inspection': 'inspector',
  released: 'front-desk',
  shipped: 'front-desk',
  closed: 'nobody',
  'returning-unrepaired': 'front-desk',
  scrapped: 'front-desk',
};

/** Who has to act before the unit moves on: who lifts its oldest hold, else an unlooked-at unit's inspector, else who owes the next answer or step. */
export function ballHolderOf(unit: {
  stage: Stage;
  consent: Consent;
  liftedByRole: BallHolder | null;
  lookedAt: boolean;
}): BallHolder {
  if (unit.stage === 'closed') return 'nobody';
  if (unit.liftedByRole) return unit.liftedByRole;
  if (unit.stage === 'received' && !unit.lookedAt) return 'inspector';
  return byConsent[unit.consent] ?? byStage[unit.stage];
}

/** Papers that should come with a unit. */
export const papers = ['logbook', 'removal-tag', 'previous-release', 'shipping-list', 'purchase-order'] as const;
export const paper = z.enum(papers).meta({ id: 'Paper' });
export type Paper = (typeof papers)[number];

/** Without these the desk asks the customer; a purchase order and an earlier release may be missing for good reasons. */
export const expectedPapers: readonly Paper[] = ['logbook', 'removal-tag', 'shipping-list'];

export const holdKinds = [
  'customer',
  'silence',
  'payment',
  'accident',
  'paperwork',
  'parts',
  'revision',
  'inspection',
  'other',
] as const;
export const holdKind = z.enum(holdKinds).meta({ id: 'HoldKind' });
export type HoldKind = (typeof holdKinds)[number];
