import { useMutation } from '@tanstack/react-query';
import { FileTrigger } from 'react-aria-components';
import type { ProblemError } from '../../api/problem.ts';
import { sendTable } from '../../api/send-table.ts';
import { formatWhole } from '../../format/numbers.ts';
import { Button } from '../../ui/Button.tsx';
import { InlineSelect } from '../../ui/InlineSelect.tsx';
import { Refusal } from '../../ui/Refusal.tsx';
import { type TableKind, tableFields, tableTitles } from './preview.ts';

const types = ['.csv', '.xlsx', 'text/csv', 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet'];

/** What the table holds, a template for it, and the file itself. */
export function ChooseTable<Kind extends TableKind>(props: {
  kind: Kind;
  kinds: readonly Kind[];
  /** Where a table of the kind is sent to, and where its template is. */
  at: { send: string; template: string };
  mostRows: number;
  onKind: (kind: Kind) => void;
  onSent: (importId: string) => void;
}) {
  const { kind, kinds, at, onSent } = props;
  const send = useMutation<{ id: string }, ProblemError, File>({
    mutationFn: (file) => sendTable(at.send, file),
    onSuccess: ({ id }) => onSent(id),
    networkMode: 'always',
  });
  const needed = tableFields[kind].filter(({ required }) => required).map(({ title }) => title);
  return (
    <div className="stack">
      <div className="row">
        <InlineSelect
          label="What it holds"
          value={kind}
          onChange={props.onKind}
          choices={kinds.map((value) => ({ value, text: tableTitles[value] }))}
          isRequired
        />
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
        <a href={at.template} download>
          Template for {tableTitles[kind].toLowerCase()}
        </a>
      </div>
      <p className="soft small">
        One line of headings, then one row each; at most {formatWhole(props.mostRows)} rows. Needed: {needed.join(', ')}
        . Nothing is taken over before you have seen every row and said so.
      </p>
      {send.error ? <Refusal problem={send.error} /> : null}
    </div>
  );
}
