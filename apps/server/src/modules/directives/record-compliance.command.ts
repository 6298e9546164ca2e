import { directiveOperations } from '@hubwright/contracts/directives/operations';
import { Problem } from '@hubwright/contracts/problems';
import { type Context, defineCommand } from '../../platform/command/command.ts';
import { requireAuthorisation } from '../people/public.ts';
import { onItem, recordOnItem } from './on-item.ts';

const operation = directiveOperations.recordCompliance;
type Recording = Context<typeof operation>;
type OnItem = Awaited<ReturnType<typeof onItem>>;

/** What an inspector found of a directive on one item; it stays with that item, wherever it is fitted next. */
export const recordCompliance = defineCommand(operation, {
  locks: (input) => [`work-order:${input.workOrderId}`],
  async execute(context) {
    const { tx, input, actor, today } = context;
    const of = await onItem(context, input);
    refuseMisfit(context, of);
    const need = { process: 'final-inspection', level: 'inspect', today } as const;
    const authorisation = await requireAuthorisation(tx, actor, need);
    const { outcome, method, terminating } = input;
    const done = await recordOnItem(context, of, {
      ...{ outcome, method, terminating, authorisation, deferredUntil: null, meaning: operation.signs ?? '' },
      ...whenDone(context, of),
    });
    // Where the record tells that it applies, nobody decides that it does not.
    if (outcome === 'does-not-apply' && done.reply.state !== 'not-applicable')
      throw new Problem('directive-not-open', `By what is on record it applies: ${of.standing.reason}`);
    return { ...done, reason: method };
  },
});

function refuseMisfit({ input, today }: Recording, { standing, item }: OnItem): void {
  const { outcome, terminating, doneOn, hoursTenths } = input;
  const isWork = outcome === 'done' || outcome === 'found-done';
  if (isWork && ['not-applicable', 'terminated'].includes(standing.state))
    throw new Problem('directive-not-open', `${standing.called}: ${standing.reason}`);
  if (outcome === 'taken-back' && (standing.last === null || standing.last.outcome === 'taken-back'))
    throw new Problem('directive-not-open', `Nothing stands recorded of ${standing.called} on this part`);
  if (terminating && (!isWork || standing.directive.terminatingAction === null))
    throw invalid('/terminating', 'The directive names no terminating action');
  if ((outcome === 'found-done') !== (doneOn !== undefined))
    throw invalid('/doneOn', 'Say when it was done where the papers show it, and only there');
  if (outcome !== 'found-done' && hoursTenths !== undefined)
    throw invalid('/hoursTenths', 'The hours of work done here are those on record');
  if (doneOn !== undefined && doneOn > today)
    throw new Problem('date-ahead', `${doneOn} is still to come`, {}, [
      { pointer: '/doneOn', detail: `${doneOn} is still to come` },
    ]);
  if (typeof hoursTenths === 'number' && item.hoursTenths !== 'unknown' && hoursTenths > item.hoursTenths)
    throw invalid('/hoursTenths', 'More than the part has since new');
}

function invalid(pointer: string, detail: string): Problem {
  return new Problem('invalid-input', detail, {}, [{ pointer, detail }]);
}

/** Work done here is of today and at the hours on record; what the papers show is as they say, unknown where they do not. */
function whenDone({ input, today }: Recording, { item }: OnItem) {
  if (input.outcome === 'found-done')
    return { doneOn: input.doneOn ?? today, hoursTenths: input.hoursTenths ?? ('unknown' as const) };
  return { doneOn: today, hoursTenths: item.hoursTenths };
}
