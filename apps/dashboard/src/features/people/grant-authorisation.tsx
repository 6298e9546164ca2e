import type { AuthorisationLevel } from '@hubwright/contracts/people/authorisation-levels';
import { type Process, peopleOperations } from '@hubwright/contracts/people/operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { dateIn } from '../../format/dates.ts';
import { levelChoices, processChoices, processWords } from '../../format/process-words.ts';
import { useShop } from '../../format/shop-context.tsx';
import { RadioList } from '../../ui/Checkbox.tsx';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { DateField } from '../../ui/DateField.tsx';
import { Select } from '../../ui/Select.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import type { Person } from './list-people.ts';

interface Draft {
  process: Process | null;
  level: AuthorisationLevel | null;
  validFrom: string;
  expiresOn: string;
  note: string;
}

/** Authorises a person for a process at a level. Nothing about process or level is chosen beforehand. */
export function GrantForm({ person, onDone, onCancel }: { person: Person; onDone: () => void; onCancel: () => void }) {
  const { zone } = useShop();
  const grant = useCommand(peopleOperations.grantAuthorisation);
  const [draft, setDraft] = useState<Draft>({
    process: null,
    level: null,
    validFrom: dateIn(zone, new Date()),
    expiresOn: '',
    note: '',
  });
  const set = (changes: Partial<Draft>) => setDraft({ ...draft, ...changes });
  const submit = () => {
    const { process, level, expiresOn, ...rest } = draft;
    // Left empty they are refused by the schema, at their own fields.
    const chosen = { process: process as Process, level: level as AuthorisationLevel };
    const input = { personId: person.id, ...rest, ...chosen, ...(expiresOn === '' ? {} : { expiresOn }) };
    const done = () => {
      say(`${person.displayName} is authorised for ${process ? processWords[process].toLowerCase() : 'it'}.`);
      onDone();
    };
    grant.mutate({ input }, { onSuccess: done });
  };
  return (
    <CommandForm
      problem={grant.error}
      isPending={grant.isPending}
      submit="Grant the authorisation"
      onSubmit={submit}
      onCancel={onCancel}
    >
      <Select
        name="process"
        label="Process"
        placeholder="Choose a process"
        value={draft.process}
        onChange={(process) => set({ process })}
        choices={processChoices}
        isRequired
      />
      <RadioList
        name="level"
        label={`${person.displayName}…`}
        value={draft.level}
        onChange={(level) => set({ level })}
        choices={levelChoices}
        isRequired
      />
      <div className="field-grid">
        <DateField
          name="validFrom"
          label="Valid from"
          value={draft.validFrom}
          onChange={(validFrom) => set({ validFrom })}
          isRequired
        />
        <DateField
          name="expiresOn"
          label="Ends on"
          hint="The first day it may not be used"
          value={draft.expiresOn}
          onChange={(expiresOn) => set({ expiresOn })}
        />
      </div>
      <TextField
        name="note"
        label="Note"
        hint="Training record, examination, roster page"
        lines={2}
        value={draft.note}
        onChange={(note) => set({ note })}
      />
    </CommandForm>
  );
}
