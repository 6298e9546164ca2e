import { declaredEvents, eventTitles } from '@hubwright/contracts/work-orders/states';
import { useQuery } from '@tanstack/react-query';
import { CheckboxList } from '../../ui/Checkbox.tsx';
import { FieldGroup } from '../../ui/FieldGroup.tsx';
import { Select } from '../../ui/Select.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { type ArrivingProps, modelQuery } from './ArrivingWho.tsx';
import { consequences, scopeChoices } from './arrival-words.ts';

/** Why it came and what happened to it; what an event means is said at once. */
export function ReasonFields({ draft, set }: ArrivingProps) {
  const model = useQuery({ ...modelQuery(draft.model?.id ?? ''), enabled: draft.model !== null }).data;
  const choices = scopeChoices(model, draft.events);
  const said = consequences(draft.events);
  return (
    <FieldGroup title="Why it came">
      <CheckboxList
        name="events"
        label="Something happened to it"
        hint="What the customer or the logbook says"
        value={draft.events}
        onChange={(events) =>
          set({
            events,
            scope: scopeChoices(model, events).some(({ value }) => value === draft.scope) ? draft.scope : null,
          })
        }
        choices={declaredEvents.map((value) => ({ value, text: eventTitles[value] }))}
      />
      <div className="stack">
        <Select
          name="scope"
          label="What is asked for"
          value={draft.scope}
          onChange={(scope) => set({ scope })}
          choices={choices}
          isRequired
        />
        <TextField
          name="reason"
          label="Reason, in the customer’s words"
          value={draft.reason}
          onChange={(reason) => set({ reason })}
          isRequired
        />
      </div>
      <div role="status">
        {said.length > 0 ? (
          <ul className="newer stack tight">
            {said.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        ) : null}
      </div>
      <TextField
        name="accidentHold"
        label="Hold before anyone touches it"
        hint="For an investigator or adjuster: who, and what they wait for. A manager lifts it."
        value={draft.accidentHold}
        onChange={(accidentHold) => set({ accidentHold })}
      />
    </FieldGroup>
  );
}
