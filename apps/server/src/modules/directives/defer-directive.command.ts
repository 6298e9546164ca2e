import { directiveOperations } from '@hubwright/contracts/directives/operations';
import { Problem } from '@hubwright/contracts/problems';
import { lastDayOfDeferral } from '@hubwright/rules/directives';
import { defineCommand } from '../../platform/command/command.ts';
import { requireAuthorisation } from '../people/public.ts';
import { onItem, recordOnItem } from './on-item.ts';

const operation = directiveOperations.deferDirective;

/** Putting off is the act of whoever may approve for return to service, within what the directive itself allows. */
export const deferDirective = defineCommand(operation, {
  locks: (input) => [`work-order:${input.workOrderId}`],
  async execute(context) {
    const { tx, input, actor, today } = context;
    const { until, reason, itemId } = input;
    const of = await onItem(context, input);
    const { directive, state, called } = of.standing;
    if (state !== 'open' && state !== 'deferred')
      throw new Problem('directive-not-open', `${called}: ${of.standing.reason}`);
    const { id, deferDays } = directive;
    const last =
      deferDays === null ? null : lastDayOfDeferral({ id, deferDays }, { records: of.records, itemId, asOf: today });
    if (last === null || until < today || until > last) {
      const detail = last === null ? `${called} allows no deferral` : `Between ${today} and ${last}`;
      throw new Problem('deferral-not-allowed', detail, {}, [{ pointer: '/until', detail }]);
    }
    const authorisation = await requireAuthorisation(tx, actor, {
      process: 'return-to-service',
      level: 'approve',
      today,
    });
    const done = await recordOnItem(context, of, {
      ...{ outcome: 'deferred', method: reason, terminating: false, doneOn: today, hoursTenths: of.item.hoursTenths },
      ...{ deferredUntil: until, meaning: operation.signs ?? '', authorisation },
    });
    return { ...done, reason };
  },
});
