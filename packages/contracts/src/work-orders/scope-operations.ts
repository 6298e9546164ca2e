import { z } from 'zod';
import { type DeclaredEvent, declaredEvent, declaredEvents, scopeSchema } from '../manuals/words.ts';
import { command, read } from '../operation.ts';
import { changed, id, line, signature } from '../values.ts';
import { difference } from './traveler-shapes.ts';

const agreed = z.object({ scope: scopeSchema, events: z.array(declaredEvent) });
const events = z.array(declaredEvent).max(6);
const oneOf = declaredEvents.join('|');
/** Names of events with commas between, as a query carries them; six at most. */
const named = new RegExp(`^((${oneOf})(,(${oneOf})){0,5})?$`);
const replanned = {
  differences: z.array(difference),
  /** What it changes belongs to a build that was closed: it opens again. */
  reopensBuild: z.boolean(),
  /** What to ask the customer because of events that were not declared before. */
  prompts: z.array(z.string()),
};

/** A change of scope while the unit is in the shop. */
export const scopeOperations = {
  scopeDifferences: read({
    id: 'scope-differences',
    noun: 'work-orders',
    path: '/api/work-orders/:workOrderId/scope-differences',
    access: 'signed-in',
    summary: 'What another scope, or other declared events, would change: route, kit, record words, times and consent',
    input: z.strictObject({
      workOrderId: id,
      scope: scopeSchema,
      /** Names of all events from then on, with commas between. */
      events: z
        .string()
        .regex(named, 'Name events, with commas between')
        .default('')
        .transform((text) => text.split(',').filter((name) => name !== '') as DeclaredEvent[]),
    }),
    output: z
      .object({
        from: agreed,
        to: agreed,
        /** The unit was looked at before these events were declared: hidden damage is looked for now. */
        needsHiddenDamage: z.boolean(),
        ...replanned,
      })
      .meta({ id: 'ScopeDifferences' }),
    problems: ['scope-refused', 'route-missing'],
  }),
  changeScope: command({
    id: 'change-scope',
    noun: 'work-orders',
    path: '/api/work-orders/:workOrderId/scope',
    access: ['inspector'],
    versioned: true,
    summary:
      'Change the scope or the declared events of a unit in the shop: steps, kit, record words and times follow; what was agreed is offered anew',
    input: z.strictObject({
      workOrderId: id,
      scope: scopeSchema,
      events,
      /** Who asked for it or what was found. */
      reason: line,
      hiddenDamage: z.string().trim().max(2000).default(''),
      signature,
    }),
    output: changed.extend(replanned).meta({ id: 'ScopeChanged' }),
    signs: 'I compared what the new scope asks for with what was done; the work continues by the new scope',
    touches: ['quotes', 'kits', 'inventory', 'releases'],
    problems: [
      'scope-refused',
      'scope-unchanged',
      'hidden-damage-unsaid',
      'route-missing',
      'revision-superseded',
      'wrong-state',
      'work-held',
      'not-authorised',
    ],
  }),
} as const;
