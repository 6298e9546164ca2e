import { partOperations } from '@hubwright/contracts/inventory/part-operations';
import { queryFor } from '../../api/query.ts';
import { Button } from '../../ui/Button.tsx';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { type Found, SearchBox } from '../../ui/SearchBox.tsx';
import { TextField } from '../../ui/TextField.tsx';

export interface PartDraft {
  readonly part: Found | null;
  readonly position: string;
  readonly quantity: string;
}
export const noPart: PartDraft = { part: null, position: '', quantity: '' };

export function partsInput(parts: readonly PartDraft[]) {
  return parts.map((each) => ({
    partId: each.part?.id ?? '',
    position: each.position,
    quantity: Number(each.quantity),
  }));
}

/** Parts the repair needs beside the kit: they become demand of the kit at once. */
export function PartsNeeded(props: { parts: readonly PartDraft[]; onChange: (parts: PartDraft[]) => void }) {
  const change = (at: number, changed: Partial<PartDraft>) =>
    props.onChange(props.parts.map((each, place) => (place === at ? { ...each, ...changed } : each)));
  return (
    <fieldset className="stack">
      <legend>
        <strong>Parts beside the kit</strong> <span className="soft small">they become demand at once</span>
      </legend>
      {props.parts.map((each, place) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: parts have no identity before they are signed
        <div key={place} className="row">
          <SearchBox
            name={`parts/${place}/partId`}
            label="Part"
            search={(text) => queryFor(partOperations.listParts, { ...(text ? { search: text } : {}), limit: 20 })}
            found={(data) => data.rows.map((row) => ({ id: row.id, name: row.number, detail: row.description }))}
            picked={each.part}
            onPick={(part) => change(place, { part })}
            isRequired
          />
          <TextField
            name={`parts/${place}/position`}
            label="Position"
            value={each.position}
            onChange={(position) => change(place, { position })}
            isRequired
          />
          <DecimalField
            name={`parts/${place}/quantity`}
            label="How many"
            decimals={0}
            value={each.quantity}
            onChange={(quantity) => change(place, { quantity })}
            isRequired
          />
          <Button weight="quiet" onPress={() => props.onChange(props.parts.filter((_, at) => at !== place))}>
            Remove
          </Button>
        </div>
      ))}
      <div className="row">
        <Button onPress={() => props.onChange([...props.parts, noPart])}>Add a part</Button>
      </div>
    </fieldset>
  );
}
