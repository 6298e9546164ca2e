import { partOperations } from '@hubwright/contracts/inventory/part-operations';
import { useState } from 'react';
import { queryFor } from '../../api/query.ts';
import { Button } from '../../ui/Button.tsx';
import { type Found, SearchBox } from '../../ui/SearchBox.tsx';

export interface AlternateFieldProps {
  numbers: readonly string[];
  onChange: (numbers: string[]) => void;
  /** The part itself, which cannot stand in for itself. */
  except?: string;
}

function swapped(numbers: readonly string[], at: number): string[] {
  const next = [...numbers];
  const [taken] = next.splice(at, 1);
  if (taken !== undefined) next.splice(at - 1, 0, taken);
  return next;
}

/** Part numbers that may stand in, best first. */
export function AlternateField({ numbers, onChange, except }: AlternateFieldProps) {
  const [round, setRound] = useState(0);
  const add = (thing: Found | null) => {
    if (!thing || numbers.includes(thing.name)) return;
    onChange([...numbers, thing.name]);
    setRound(round + 1);
  };
  return (
    <div className="stack tight">
      <SearchBox
        key={round}
        name="alternates"
        label="May stand in for it"
        hint="Best first; search by number or description"
        picked={null}
        onPick={add}
        search={(text) => queryFor(partOperations.listParts, { search: text, limit: 20 })}
        found={({ rows }) =>
          rows
            .filter((row) => row.number !== except && !numbers.includes(row.number))
            .map(({ id, number, description }) => ({ id, name: number, detail: description }))
        }
      />
      <ol className="lines">
        {numbers.map((number, at) => (
          <li key={number}>
            <span className="code">
              {at + 1}. {number}
            </span>
            <Button
              weight="quiet"
              isDisabled={at === 0}
              onPress={() => onChange(swapped(numbers, at))}
              aria-label={`Earlier: ${number}`}
            >
              Earlier
            </Button>
            <Button
              weight="quiet"
              onPress={() => onChange(numbers.filter((each) => each !== number))}
              aria-label={`Leave out ${number}`}
            >
              Leave out
            </Button>
          </li>
        ))}
      </ol>
    </div>
  );
}
