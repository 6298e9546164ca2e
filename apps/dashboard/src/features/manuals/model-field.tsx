import { manualOperations } from '@hubwright/contracts/manuals/operations';
import { useState } from 'react';
import { queryFor } from '../../api/query.ts';
import { Button } from '../../ui/Button.tsx';
import { type Found, SearchBox } from '../../ui/SearchBox.tsx';

export interface NamedModel {
  readonly id: string;
  readonly designation: string;
}

/** Models, each picked by its designation. */
export function ModelField({
  models,
  onChange,
}: {
  models: readonly NamedModel[];
  onChange: (to: NamedModel[]) => void;
}) {
  const [round, setRound] = useState(0);
  const add = (thing: Found | null) => {
    if (!thing || models.some(({ id }) => id === thing.id)) return;
    onChange([...models, { id: thing.id, designation: thing.name }]);
    setRound(round + 1);
  };
  return (
    <div className="stack tight">
      <SearchBox
        key={round}
        name="modelIds"
        label="Models it belongs to"
        hint="Search by designation; work on each of them goes by it"
        picked={null}
        onPick={add}
        search={(text) => queryFor(manualOperations.listModels, { search: text, limit: 20 })}
        found={({ rows }) =>
          rows
            .filter((row) => !models.some(({ id }) => id === row.id))
            .map(({ id, designation, maker }) => ({ id, name: designation, detail: maker }))
        }
      />
      <ul className="lines">
        {models.map((model) => (
          <li key={model.id}>
            <span className="code">{model.designation}</span>
            <Button
              weight="quiet"
              onPress={() => onChange(models.filter(({ id }) => id !== model.id))}
              aria-label={`Leave out ${model.designation}`}
            >
              Leave out
            </Button>
          </li>
        ))}
      </ul>
    </div>
  );
}
