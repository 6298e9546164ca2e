import type { ProblemType } from '@hubwright/contracts/problems';
import type { Consent, Stage } from '@hubwright/contracts/work-orders/states';
import { stageTitles } from '@hubwright/contracts/work-orders/states';
import type { TurnRow } from './turn.ts';

/** Why a step cannot be signed now. */
export interface Block {
  readonly problem: ProblemType;
  readonly detail: string;
}

type Facts = Pick<
  TurnRow,
  | 'phase'
  | 'stage'
  | 'consent'
  | 'work_order_number'
  | 'disposition'
  | 'holds'
  | 'revision_state'
  | 'revision'
  | 'manual'
  | 'documents'
  | 'undecided'
  | 'unanswered'
  | 'unready'
  | 'waits_until'
  | 'waits_words'
  | 'outside'
  | 'vendor'
  | 'held_lot'
>;

const evaluationConsents = new Set<Consent>([
  'evaluation-approved',
  'quote-due',
  'quote-sent',
  'quote-silent',
  'approved',
]);
export const workStages = new Set<Stage>(['teardown', 'inspected', 'in-work', 'build', 'final-inspection']);

/** Whether the customer has agreed to work of this phase: evaluation once it is approved, all else once the firm quote is. */
export function isAgreed(phase: string, consent: string): boolean {
  return phase === 'evaluation' ? evaluationConsents.has(consent as Consent) : consent === 'approved';
}

/** The first reason why a step whose turn it is cannot be done at an instant, in the order a person can do something about them. */
export function blockOf(facts: Facts, at: Date): Block | undefined {
  const number = facts.work_order_number;
  if (facts.disposition === 'reject')
    return block('traveler-rejected', 'The part was rejected; no more work is signed on it');
  if (!workStages.has(facts.stage as Stage)) {
    return block(
      'wrong-state',
      `${number} is at “${stageTitles[facts.stage as Stage] ?? facts.stage}”: no work is signed there`,
    );
  }
  if (facts.holds) return block('work-held', `${number} is held: ${facts.holds}`);
  if (facts.revision_state !== 'current') {
    return block(
      'revision-superseded',
      `Revision ${facts.revision} of ${facts.manual} is superseded: an inspector takes ${number} over to the current one`,
    );
  }
  if (facts.documents)
    return block(
      'documents-changed',
      `${number} does not go by the current issue of: ${facts.documents}. An inspector takes it over`,
    );
  if (facts.held_lot)
    return block('peening-held', `Closing strips of ${facts.held_lot} failed: an inspector decides on the lot`);
  return blockByPhase(facts) ?? blockByWait(facts, at) ?? blockByVendor(facts);
}

/** The same without regard to where the part is: what also keeps it from going to a vendor. */
export function blockToSend(facts: Facts, at: Date): Block | undefined {
  return blockOf({ ...facts, outside: false }, at);
}

function blockByPhase(facts: Facts): Block | undefined {
  const number = facts.work_order_number;
  if (!isAgreed(facts.phase, facts.consent)) {
    const what = facts.phase === 'evaluation' ? 'the evaluation' : 'the firm quote';
    return block('consent-missing', `${number}: the customer has not approved ${what}`);
  }
  if (facts.phase !== 'evaluation' && facts.undecided) {
    return block('finding-undecided', `${facts.undecided} has no disposition yet`);
  }
  if (facts.unanswered) {
    return block('over-and-above-unanswered', `The customer has not approved what ${facts.unanswered} costs`);
  }
  if (facts.unready) return block('parts-not-ready', `Open steps before the build: ${facts.unready}`);
  if (facts.phase === 'final' && facts.stage !== 'final-inspection')
    return block('build-open', `The build of ${number} is not closed`);
  if (facts.phase === 'build' && facts.stage !== 'build' && facts.stage !== 'in-work') {
    return block(
      'wrong-state',
      `${number} is at “${stageTitles[facts.stage as Stage] ?? facts.stage}”: build steps are signed before the build is closed`,
    );
  }
  return undefined;
}

/** Outside work is signed when the part is back and was found good. */
function blockByVendor({ outside, vendor }: Facts): Block | undefined {
  if (!outside || vendor?.condition === 'good') return undefined;
  const where = !vendor
    ? 'This is done outside: the part has not been sent yet'
    : vendor.condition === null
      ? `The part is at ${vendor.name} on ${vendor.order}, expected back on ${vendor.expected}`
      : vendor.condition === 'lost'
        ? `The part was lost at ${vendor.name} on ${vendor.order}: an inspector rejects it by a finding`
        : `The part came back from ${vendor.name} ${vendor.condition.replace('-', ' ')}: raise a finding, or send it again`;
  return block('not-back-from-vendor', where);
}

/** Nothing is built on what still cures, bakes or soaks. */
function blockByWait({ waits_until: until, waits_words: words }: Facts, at: Date): Block | undefined {
  if (!until || until <= at) return undefined;
  return block('still-waiting', `What was done before is ready on ${words}`);
}

function block(problem: ProblemType, detail: string): Block {
  return { problem, detail };
}
