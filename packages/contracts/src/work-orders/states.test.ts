import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import type { Access } from '../operation.ts';
import { quoteOperations } from '../quotes/operations.ts';
import { releaseOperations } from '../releases/operations.ts';
import { roles } from '../roles.ts';
import { workOrderOperations } from './operations.ts';
import { scopeOperations } from './scope-operations.ts';
import {
  type Action,
  actions,
  ballHolderOf,
  type Consent,
  consents,
  consentTable,
  isPossible,
  movesOn,
  next,
  type Stage,
  stages,
  stageTable,
} from './states.ts';
import { touchUpOperations } from './touch-up-operations.ts';
import { travelerOperations } from './traveler-operations.ts';

interface State {
  readonly stage: Stage;
  readonly consent: Consent;
}
const start: State = { stage: 'received', consent: 'estimate-due' };
const name = ({ stage, consent }: State) => `${stage}, ${consent}`;

function step(state: State, action: Action): State {
  return {
    stage: next(stageTable, state.stage, action)?.to ?? state.stage,
    consent: next(consentTable, state.consent, action)?.to ?? state.consent,
  };
}

/** Every pair of states a work order can get into. */
function reachable(): Map<string, State> {
  const known = new Map([[name(start), start]]);
  const open = [start];
  for (let state = open.pop(); state; state = open.pop())
    for (const action of actions.filter((one) => isPossible(state as State, one))) {
      const to = step(state, action);
      if (known.has(name(to))) continue;
      known.set(name(to), to);
      open.push(to);
    }
  return known;
}

const all = [...reachable().values()];

describe('the state tables of a work order', () => {
  it('reach every stage and every consent from the dock', () => {
    expect(new Set(all.map((state) => state.stage))).toEqual(new Set(stages));
    expect(new Set(all.map((state) => state.consent))).toEqual(new Set(consents));
  });

  it('let every action happen somewhere, and permit each to someone', () => {
    for (const action of actions) {
      expect([action, all.some((state) => isPossible(state, action))]).toEqual([action, true]);
      const permitted = [...stageTable, ...consentTable].filter((move) => move.action === action);
      for (const move of permitted) {
        expect(move.roles.length).toBeGreaterThan(0);
        expect(roles).toEqual(expect.arrayContaining([...move.roles]));
      }
    }
  });

  it('leave no way out but closing: every other state can still get to closed', () => {
    const canClose = new Set(all.filter((state) => state.stage === 'closed').map(name));
    for (let before = -1; before !== canClose.size; ) {
      before = canClose.size;
      for (const state of all)
        if (actions.some((action) => isPossible(state, action) && canClose.has(name(step(state, action)))))
          canClose.add(name(state));
    }
    expect(all.filter((state) => !canClose.has(name(state))).map(name)).toEqual([]);
    const closed = all.filter((state) => state.stage === 'closed');
    expect(closed.flatMap((state) => actions.filter((action) => isPossible(state, action)))).toEqual([]);
  });

  it('name who moves a unit on: every state before final inspection has someone, and only those the tables permit', () => {
    expect(movesOn({ stage: 'build', consent: 'approved' })).toEqual(['technician', 'inspector']);
    expect(movesOn({ stage: 'inspected', consent: 'quote-due' })).toEqual(['front-desk', 'manager']);
    const before: readonly Stage[] = ['received', 'teardown', 'inspected', 'in-work', 'build'];
    for (const state of all.filter(({ stage }) => before.includes(stage))) {
      const tables: readonly { from: string; roles: readonly string[] }[] = [...stageTable, ...consentTable];
      const permitted = tables.filter(({ from }) => from === state.stage || from === state.consent);
      expect([name(state), movesOn(state).length > 0]).toEqual([name(state), state.consent !== 'declined']);
      for (const role of movesOn(state)) expect(permitted.some(({ roles: who }) => who.includes(role))).toBe(true);
    }
  });

  it('say one thing only for a state and an action', () => {
    for (const table of [stageTable, consentTable]) {
      const pairs = table.map((move) => `${move.from} ${move.action}`);
      expect(new Set(pairs).size).toBe(pairs.length);
    }
  });

  it('are obeyed by the endpoints: who may call is who the table permits', () => {
    const endpoints: Record<Action, { id: string; access: Access }> = {
      'send-estimate': quoteOperations.sendQuote,
      'send-quote': quoteOperations.sendQuote,
      'approve-evaluation': quoteOperations.approveQuote,
      'approve-quote': quoteOperations.approveQuote,
      'decline-return': quoteOperations.declineQuote,
      'decline-purchase': quoteOperations.declineQuote,
      'decline-scrap': quoteOperations.declineQuote,
      'record-silence': quoteOperations.recordSilence,
      'start-teardown': travelerOperations.beginTeardown,
      'declare-inspected': workOrderOperations.declareInspected,
      'start-build': travelerOperations.signStep,
      'close-build': travelerOperations.closeBuild,
      'reopen-build': touchUpOperations.touchUp,
      'approve-return-to-service': releaseOperations.approveRelease,
      'return-unrepaired': workOrderOperations.returnUnrepaired,
      'change-scope': scopeOperations.changeScope,
      ship: workOrderOperations.shipUnit,
      close: workOrderOperations.closeWorkOrder,
    };
    for (const [action, operation] of Object.entries(endpoints)) {
      const permitted = [...stageTable, ...consentTable].filter((move) => move.action === action);
      for (const role of operation.access as readonly string[])
        for (const move of permitted)
          expect([operation.id, action, move.roles]).toEqual([operation.id, action, expect.arrayContaining([role])]);
    }
  });
});

describe('whatever people do, in any order', () => {
  const walks = fc.array(fc.constantFrom(...actions), { maxLength: 60 });
  const working: readonly Stage[] = ['in-work', 'build', 'final-inspection', 'released'];

  it('work goes on only with the customer’s yes, and a unit never leaves unreleased but after a no', () => {
    fc.assert(
      fc.property(walks, (walk) => {
        let state = start;
        let released = false;
        for (const action of walk) {
          if (!isPossible(state, action)) continue;
          state = step(state, action);
          released ||= state.stage === 'released';
          if (working.includes(state.stage)) expect(state.consent).toBe('approved');
          if (state.stage === 'teardown') expect(state.consent).toBe('evaluation-approved');
          if (state.stage === 'shipped') expect(released || state.consent === 'declined').toBe(true);
          if (state.consent === 'declined') expect(working).not.toContain(state.stage);
        }
      }),
      { numRuns: 2_000 },
    );
  });

  it('someone has the ball until the work order is closed', () => {
    for (const state of all) {
      const free = ballHolderOf({ ...state, liftedByRole: null, lookedAt: true });
      expect([name(state), free === 'nobody']).toEqual([name(state), state.stage === 'closed']);
      const held = ballHolderOf({ ...state, liftedByRole: 'manager', lookedAt: true });
      if (state.stage !== 'closed') expect(held).toBe('manager');
    }
    expect(ballHolderOf({ ...start, liftedByRole: null, lookedAt: false })).toBe('inspector');
  });
});
