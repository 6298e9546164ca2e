import { type ImportKind, importFields, importKinds, importTitles } from '@hubwright/contracts/imports/kinds';
import { useMutation } from '@tanstack/react-query';
import { FileTrigger } from 'react-aria-components';
import type { ProblemError } from '../../api/problem.ts';
import { sendTable } from '../../api/send-table.ts';
import { Button } from '../../ui/Button.tsx';
import { InlineSelect } from '../../ui/InlineSelect.tsx';
import { Refusal } from '../../ui/Refusal.tsx';

const choices = importKinds.map((value) => ({ value, text: importTitles[value] }));
const types = ['.csv', '.xlsx', 'text/csv', 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet'];

/** What the table holds, a template for it, and the file itself. */
export function ChooseTable(props: {
  kind: ImportKind;
  onKind: (kind: ImportKind) => void;
  onSent: (importId: string) => void;
}) {
  const { kind, onKind, onSent } = props;
  const send = useMutation<{ id: string }, ProblemError, File>({
    mutationFn: (file) => sendTable(kind, file),
    onSuccess: ({ id }) => onSent(id),
    networkMode: 'always',
  });
  const needed = importFields[kind].filter(({ required }) => required).map(({ title }) => title);
  return (
    <div className="stack">
      <div className="row">
        <InlineSelect label="What it holds" value={kind} onChange={onKind} choices={choices} isRequired />
        <FileTrigger
          acceptedFileTypes={types}
          onSelect={(files) => {
            const file = files?.[0];
            if (file) send.mutate(file);
          }}
        >
          <Button weight="next" isPending={send.isPending}>
            Choose a CSV or XLSX file
          </Button>
        </FileTrigger>
        <a href={`/api/import-templates/${kind}`} download>
          Template for {importTitles[kind].toLowerCase()}
        </a>
      </div>
      <p className="soft small">
        One line of headings, then one row each; at most 20,000 rows. Needed: {needed.join(', ')}. Nothing is taken over
        before you have seen every row and said so.
      </p>
      {send.error ? <Refusal problem={send.error} /> : null}
    </div>
  );
}
