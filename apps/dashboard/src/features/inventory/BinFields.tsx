import { DecimalField } from '../../ui/DecimalField.tsx';
import { TextField } from '../../ui/TextField.tsx';

export interface BinDraft {
  readonly title: string;
  readonly walk: string;
}

/** What a bin is called and when one comes by on the way through the store. */
export function BinFields<D extends BinDraft>({ draft, onChange }: { draft: D; onChange: (draft: D) => void }) {
  return (
    <>
      <TextField
        name="title"
        label="What it is called"
        value={draft.title}
        onChange={(title) => onChange({ ...draft, title })}
      />
      <DecimalField
        name="walk"
        label="Place in the walk"
        hint="Pull lists go from low to high; leave gaps, such as 10, 20, 30"
        decimals={0}
        value={draft.walk}
        onChange={(walk) => onChange({ ...draft, walk })}
        isRequired
      />
    </>
  );
}
