import { manualOperations } from '@hubwright/contracts/manuals/operations';
import { queryFor } from '../../api/query.ts';
import { Button } from '../../ui/Button.tsx';
import { SearchBox } from '../../ui/SearchBox.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { type LineDraft, newLine } from './directive-draft.ts';

/** To what it applies: models, parts by number, serials from and to. */
export function LineFields({
  lines,
  onChange,
}: {
  lines: readonly LineDraft[];
  onChange: (lines: LineDraft[]) => void;
}) {
  const set = (key: number, changes: Partial<LineDraft>) =>
    onChange(lines.map((line) => (line.key === key ? { ...line, ...changes } : line)));
  return (
    <fieldset className="stack tight">
      <legend>Applies to</legend>
      {lines.map((line, index) => (
        <div key={line.key} className="field-grid">
          <SearchBox
            name={`lines/${index}/modelId`}
            label={`Model ${index + 1}`}
            hint="Empty where a part is meant in any model"
            picked={line.model ? { id: line.model.id, name: line.model.designation } : null}
            onPick={(thing) => set(line.key, { model: thing ? { id: thing.id, designation: thing.name } : null })}
            search={(text) => queryFor(manualOperations.listModels, { search: text, limit: 20 })}
            found={({ rows }) => rows.map(({ id, designation, maker }) => ({ id, name: designation, detail: maker }))}
          />
          <TextField
            name={`lines/${index}/partNumber`}
            label={`Part number ${index + 1}`}
            value={line.partNumber}
            onChange={(partNumber) => set(line.key, { partNumber })}
            isCode
          />
          <TextField
            name={`lines/${index}/serialFrom`}
            label={`From serial ${index + 1}`}
            value={line.serialFrom}
            onChange={(serialFrom) => set(line.key, { serialFrom })}
            isCode
          />
          <TextField
            name={`lines/${index}/serialTo`}
            label={`To serial ${index + 1}`}
            hint="Both ends included"
            value={line.serialTo}
            onChange={(serialTo) => set(line.key, { serialTo })}
            isCode
          />
          {lines.length > 1 ? (
            <Button weight="quiet" onPress={() => onChange(lines.filter(({ key }) => key !== line.key))}>
              Leave out line {index + 1}
            </Button>
          ) : null}
        </div>
      ))}
      <div className="row">
        <Button weight="quiet" onPress={() => onChange([...lines, newLine((lines.at(-1)?.key ?? 0) + 1)])}>
          One more line
        </Button>
      </div>
    </fieldset>
  );
}
