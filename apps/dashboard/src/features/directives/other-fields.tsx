import { directiveOperations } from '@hubwright/contracts/directives/operations';
import { useState } from 'react';
import { queryFor } from '../../api/query.ts';
import { CheckboxList } from '../../ui/Checkbox.tsx';
import { type Found, SearchBox } from '../../ui/SearchBox.tsx';
import type { Link, OtherDraft } from './directive-draft.ts';
import { calledOf } from './directives.ts';

const choices: { value: Link; text: string }[] = [
  { value: 'supersedes', text: 'it is superseded' },
  { value: 'credits', text: 'work done by it counts' },
  { value: 'ends', text: 'work by this one ends it for good' },
];

/** What this one says of others on record. */
export function OtherFields({
  others,
  onChange,
}: {
  others: readonly OtherDraft[];
  onChange: (to: OtherDraft[]) => void;
}) {
  const [round, setRound] = useState(0);
  const add = (thing: Found | null) => {
    if (!thing || others.some(({ id }) => id === thing.id)) return;
    onChange([...others, { id: thing.id, called: thing.name, says: ['supersedes', 'credits'] }]);
    setRound(round + 1);
  };
  return (
    <div className="stack tight">
      <SearchBox
        key={round}
        name="supersedes"
        label="Others it speaks of"
        hint="Search by number; then say what it says of each"
        picked={null}
        onPick={add}
        search={(text) => queryFor(directiveOperations.listDirectives, { search: text, limit: 20 })}
        found={({ rows }) => rows.map((row) => ({ id: row.id, name: calledOf(row), detail: row.title }))}
      />
      {others.map((other) => (
        <CheckboxList
          key={other.id}
          label={other.called}
          value={other.says}
          onChange={(says) => onChange(others.map((one) => (one.id === other.id ? { ...one, says } : one)))}
          choices={choices}
        />
      ))}
    </div>
  );
}
