import { DateField } from '../../ui/DateField.tsx';
import { TextField } from '../../ui/TextField.tsx';

export interface IssueDraft {
  readonly issue: string;
  readonly issuedOn: string;
  readonly summary: string;
}

/** What is asked about an issue, the first as any later one. */
export function IssueFields({ draft, set }: { draft: IssueDraft; set: (changes: Partial<IssueDraft>) => void }) {
  return (
    <>
      <div className="field-grid">
        <TextField
          name="issue"
          label="Issue or revision"
          value={draft.issue}
          onChange={(issue) => set({ issue })}
          isRequired
        />
        <DateField
          name="issuedOn"
          label="Date of issue"
          value={draft.issuedOn}
          onChange={(issuedOn) => set({ issuedOn })}
          isRequired
        />
      </div>
      <TextField
        name="summary"
        label="What it changes"
        hint="An inspector with open work reads this before going on"
        lines={3}
        value={draft.summary}
        onChange={(summary) => set({ summary })}
        isRequired
      />
    </>
  );
}
