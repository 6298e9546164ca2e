import { declaredEvents, eventTitles } from '@hubwright/contracts/manuals/words';
import { useQuery } from '@tanstack/react-query';
import { CheckboxList } from '../../ui/Checkbox.tsx';
import { Select } from '../../ui/Select.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { type ArrivingProps, modelQuery } from './ArrivingWho.tsx';
import { consequences, scopeChoices } from './arrival-words.ts';
import styles from './arriving.module.css';

/** Why it came and what happened to it; what an event means is said at once. */
export function ReasonFields({ draft, set }: ArrivingProps) {
  const model = useQuery({ ...modelQuery(draft.model?.id ?? ''), enabled: draft.model !== null }).data;
  const choices = scopeChoices(model, draft.events);
  const said = consequences(draft.events);
  return (
    <section className="field-group stack" aria-labelledby="why-it-came">
      <h2 id="why-it-came">Why it came</h2>
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
      <div role="status">
        {said.length > 0 ? (
          <ul className={styles.said}>
            {said.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        ) : null}
      </div>
      <div className="field-grid">
        <Select
          name="scope"
          label="What is asked for"
          placeholder="Choose a scope"
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
        <TextField
          name="accidentHold"
          label="Hold before anyone touches it"
          hint="For an investigator or adjuster: who, and what they wait for. A manager lifts it."
          value={draft.accidentHold}
          onChange={(accidentHold) => set({ accidentHold })}
        />
      </div>
    </section>
  );
}
