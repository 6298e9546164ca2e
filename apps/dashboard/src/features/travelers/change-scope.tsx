import {
  type DeclaredEvent,
  declaredEvents,
  eventTitles,
  type Scope,
  scopes,
  scopeTitles,
} from '@hubwright/contracts/manuals/words';
import type { Reply } from '@hubwright/contracts/operation';
import { scopeOperations } from '@hubwright/contracts/work-orders/scope-operations';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { queryFor } from '../../api/query.ts';
import { countOf } from '../../format/numbers.ts';
import { CheckboxList } from '../../ui/Checkbox.tsx';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { Refusal } from '../../ui/Refusal.tsx';
import { Select } from '../../ui/Select.tsx';
import { SignCommand, type Signer } from '../../ui/SignCommand.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import { DifferenceList } from './DifferenceList.tsx';

interface Changed {
  id: string;
  number: string;
  version: number;
  scope: Scope;
  events: readonly DeclaredEvent[];
}

type Differences = Reply<typeof scopeOperations.scopeDifferences>['differences'];

const scopeChoices = scopes.map((value) => ({ value, text: scopeTitles[value] }));
const eventChoices = declaredEvents.map((value) => ({ value, text: eventTitles[value] }));

/** What is signed, after it was read whole: the agreement itself, and how much of the rest there is. */
function Briefly({ of }: { of: Differences }) {
  const rest = of.filter(({ area }) => area !== 'scope').length;
  return (
    <>
      <DifferenceList differences={of.filter(({ area }) => area === 'scope')} from="Now" to="From now on" />
      <p>{rest > 0 ? `And ${countOf(rest, 'difference')} of steps, limits and kit, as shown before.` : ''}</p>
    </>
  );
}

/** What another scope or a late event changes is seen while it is chosen, and signed as it was seen. */
export function ChangeScope({ order, signer, onClose }: { order: Changed; signer: Signer; onClose: () => void }) {
  const [scope, setScope] = useState<Scope>(order.scope);
  const [events, setEvents] = useState<readonly DeclaredEvent[]>(order.events);
  const [reason, setReason] = useState('');
  const [hiddenDamage, setHiddenDamage] = useState('');
  const [isSigning, setSigning] = useState(false);
  const isChanged = scope !== order.scope || [...events].sort().join() !== [...order.events].sort().join();
  const asked = { workOrderId: order.id, scope, events: [...events].sort().join(',') };
  const plan = useQuery({ ...queryFor(scopeOperations.scopeDifferences, asked), enabled: isChanged });
  const shown = isChanged ? plan.data : undefined;
  const list = shown ? (
    <>
      {shown.prompts.map((prompt) => (
        <p key={prompt}>{prompt}</p>
      ))}
      <DifferenceList differences={shown.differences} from="Now" to="From now on" />
      {shown.reopensBuild ? <p>The build was closed; it opens again, and is closed again at the end.</p> : null}
    </>
  ) : null;
  if (isSigning)
    return (
      <SignCommand
        op={scopeOperations.changeScope}
        input={{ workOrderId: order.id, scope, events: [...events], reason, hiddenDamage }}
        version={order.version}
        signer={signer}
        onClose={() => setSigning(false)}
        onWrongInput={() => setSigning(false)}
        onSigned={() => {
          say(`${order.number} goes on as: ${scopeTitles[scope]}.`);
          onClose();
        }}
      >
        <p>
          {order.number}: {reason}
        </p>
        {hiddenDamage ? <p>Hidden damage: {hiddenDamage}</p> : null}
        {shown ? <Briefly of={shown.differences} /> : null}
      </SignCommand>
    );
  return (
    <Dialog title={`Change the scope of ${order.number}`} isOpen onClose={onClose} width="wide">
      <CommandForm
        problem={null}
        isPending={isChanged && plan.isFetching}
        submit="Go on to sign"
        onSubmit={() => shown && setSigning(true)}
        onCancel={onClose}
      >
        <div className="field-grid">
          <Select
            name="scope"
            label="What is asked for"
            value={scope}
            onChange={setScope}
            choices={scopeChoices}
            isRequired
          />
          <TextField
            name="reason"
            label="Who asked, or what was found"
            value={reason}
            onChange={setReason}
            isRequired
          />
        </div>
        <CheckboxList
          name="events"
          label="Something happened to it"
          value={events}
          onChange={setEvents}
          choices={eventChoices}
        />
        {shown?.needsHiddenDamage ? (
          <TextField
            name="hiddenDamage"
            label="Hidden damage"
            hint="It was looked at before this was declared: what you looked at now, and what you found"
            lines={3}
            value={hiddenDamage}
            onChange={setHiddenDamage}
            isRequired
          />
        ) : null}
        <section aria-live="polite" className="stack" aria-label="What it changes">
          {isChanged ? null : (
            <p className="soft">Choose another scope, or declare an event, to see what it changes.</p>
          )}
          {isChanged && plan.error ? <Refusal problem={plan.error} /> : null}
          {list}
        </section>
      </CommandForm>
    </Dialog>
  );
}
