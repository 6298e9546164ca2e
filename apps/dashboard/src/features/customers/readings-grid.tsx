import type { Meter } from '@hubwright/contracts/customers/operations';
import { readingsOperations } from '@hubwright/contracts/customers/readings-operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { meterChoices } from '../../format/meter-words.tsx';
import { countOf } from '../../format/numbers.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { DateField } from '../../ui/DateField.tsx';
import { useNavigateTo } from '../../ui/Link.tsx';
import { Select } from '../../ui/Select.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import type { Customer } from './customers.ts';
import { ReadingLine } from './ReadingLine.tsx';
import styles from './readings.module.css';
import { emptyEntry, type GridEntry, gridRows, sentRows } from './readings-draft.ts';

/** A figure for each aircraft, the last one beside it; all of it goes on record at once. */
export function ReadingsGrid({ customer, today }: { customer: Customer; today: string }) {
  const record = useCommand(readingsOperations.recordReadings);
  const navigate = useNavigateTo();
  const [readOn, setReadOn] = useState(today);
  const [basis, setBasis] = useState('');
  const [first, setFirst] = useState<Meter>('tachometer');
  const [entries, setEntries] = useState<Readonly<Record<string, GridEntry>>>({});
  const grid = gridRows(customer.aircraft, first);
  const rows = sentRows(grid, entries);
  const filled = grid.filter(({ key }) => (entries[key] ?? emptyEntry).hours !== '');
  const send = () =>
    record.mutate(
      { input: { customerId: customer.id, readOn, basis, rows } },
      {
        onSuccess: ({ recorded, same }) => {
          say(`${countOf(recorded, 'reading')} recorded${same > 0 ? `, ${same} on record already` : ''}.`);
          navigate(`/customers/${customer.id}`);
        },
      },
    );
  return (
    <CommandForm
      problem={record.error}
      isPending={record.isPending}
      submit={`Record ${countOf(rows.length, 'reading')}`}
      onSubmit={send}
      onCancel={() => navigate(`/customers/${customer.id}`)}
    >
      <div className="field-grid">
        <DateField name="readOn" label="Read on" value={readOn} onChange={setReadOn} isRequired />
        <TextField name="basis" label="Who says so" value={basis} onChange={setBasis} isRequired />
        {customer.aircraft.some(({ latestReadings }) => latestReadings.length === 0) ? (
          <Select
            name="first"
            label="Meter of aircraft never read"
            value={first}
            onChange={setFirst}
            choices={meterChoices}
            isRequired
          />
        ) : null}
      </div>
      <ul className={styles.grid} aria-label="A figure for each meter; leave empty what nobody read">
        {grid.map((row) => (
          <ReadingLine
            key={row.key}
            row={row}
            at={filled.indexOf(row)}
            readOn={readOn}
            entry={entries[row.key] ?? emptyEntry}
            onChange={(entry) => setEntries({ ...entries, [row.key]: entry })}
          />
        ))}
      </ul>
    </CommandForm>
  );
}
