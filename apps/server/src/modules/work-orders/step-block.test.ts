import { describe, expect, it } from '@jest/globals';
import { blockOf as blockAt, isAgreed } from './step-block.ts';

const free = {
  phase: 'repair',
  stage: 'in-work',
  consent: 'approved',
  work_order_number: 'WO-0001',
  disposition: null,
  holds: null,
  revision_state: 'current',
  revision: '5',
  manual: 'QOM-301',
  documents: null,
  undecided: null,
  unanswered: null,
  unready: null,
  waits_until: null,
  waits_words: null,
  outside: false,
  vendor: null,
  held_lot: null,
};
const noon = new Date('2027-03-01T12:00:00Z');
const blockOf = (facts: Parameters<typeof blockAt>[0]) => blockAt(facts, noon);

describe('whether the step whose turn it is can be signed', () => {
  it('is yes when nothing stops it', () => {
    expect(blockOf(free)).toBeUndefined();
    expect(
      blockOf({ ...free, phase: 'evaluation', stage: 'teardown', consent: 'evaluation-approved' }),
    ).toBeUndefined();
    expect(blockOf({ ...free, phase: 'build', stage: 'build' })).toBeUndefined();
    expect(blockOf({ ...free, phase: 'final', stage: 'final-inspection' })).toBeUndefined();
  });

  it.each([
    ['the part was rejected', { disposition: 'reject' }, 'traveler-rejected'],
    ['the unit is still at receiving', { stage: 'received' }, 'wrong-state'],
    ['the unit was released', { stage: 'released' }, 'wrong-state'],
    ['there is a hold', { holds: 'unpaid (lifted by manager)' }, 'work-held'],
    ['the revision is superseded', { revision_state: 'superseded' }, 'revision-superseded'],
    ['the firm quote is not approved', { consent: 'quote-sent' }, 'consent-missing'],
    [
      'evaluation is not approved',
      { phase: 'evaluation', stage: 'teardown', consent: 'estimate-sent' },
      'consent-missing',
    ],
    ['a finding waits for its disposition', { undecided: 'F-0001' }, 'finding-undecided'],
    ['the customer has not approved the finding', { unanswered: 'F-0002' }, 'over-and-above-unanswered'],
    ['documents changed', { documents: 'SL-12' }, 'documents-changed'],
    ['other parts are not ready for the build', { phase: 'build', unready: 'TR-00002' }, 'parts-not-ready'],
    ['paint still cures', { waits_until: new Date('2027-03-01T12:00:01Z') }, 'still-waiting'],
    ['the build is not closed', { phase: 'final', stage: 'build' }, 'build-open'],
    ['the build is closed', { phase: 'build', stage: 'final-inspection' }, 'wrong-state'],
  ])('is no when %s', (_, change, problem) => {
    expect(blockOf({ ...free, ...change })?.problem).toBe(problem);
  });

  it('is no while a part of an outside step is not back, or came back bad', () => {
    const away = { name: 'Sedge Plating', order: 'VO-0001', expected: '2027-03-05', condition: null as string | null };
    expect(blockOf({ ...free, outside: true })?.detail).toContain('has not been sent yet');
    expect(blockOf({ ...free, outside: true, vendor: away })?.detail).toContain('expected back on 2027-03-05');
    expect(blockOf({ ...free, outside: true, vendor: { ...away, condition: 'wrong-work' } })?.detail).toContain(
      'wrong work',
    );
    expect(blockOf({ ...free, outside: true, vendor: { ...away, condition: 'good' } })).toBeUndefined();
  });

  it('is yes from the instant the wait is over', () => {
    expect(blockOf({ ...free, waits_until: noon })).toBeUndefined();
  });

  it('lets evaluation go on beside an undecided finding: all is found before anyone quotes', () => {
    expect(
      blockOf({ ...free, phase: 'evaluation', stage: 'teardown', consent: 'evaluation-approved', undecided: 'F-0001' }),
    ).toBeUndefined();
  });

  it.each(['estimate-due', 'estimate-sent', 'estimate-silent', 'declined'])(
    'agrees to nothing while consent is %s',
    (consent) => {
      expect([isAgreed('evaluation', consent), isAgreed('repair', consent)]).toEqual([false, false]);
    },
  );
});
