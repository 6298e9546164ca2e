import { studyOperations } from '@hubwright/contracts/processes/study-operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { countOf } from '../../format/numbers.ts';
import { useToday } from '../../format/use-today.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { DateField } from '../../ui/DateField.tsx';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import type { Instrument } from './instruments.ts';
import { cellsFrom } from './studies.ts';

/** A study as it was written down at the bench or in a spreadsheet: typed or pasted, one line for an appraiser and a part. */
export function RecordStudy({ instrument, onClose }: { instrument: Instrument; onClose: () => void }) {
  const record = useCommand(studyOperations.recordGaugeStudy);
  const [draft, setDraft] = useState({
    title: '',
    unit: instrument.unit ?? '',
    tolerance: '',
    heldOn: useToday(),
    text: '',
  });
  const set = (changes: Partial<typeof draft>) => setDraft({ ...draft, ...changes });
  const { cells, wrong } = cellsFrom(draft.text);
  const count = (of: 'appraiser' | 'part') => new Set(cells.map((cell) => cell[of])).size;
  const { title, unit, tolerance, heldOn } = draft;
  const send = () =>
    record.mutate(
      {
        input: { instrumentId: instrument.id, title, unit, heldOn, cells, ...(tolerance === '' ? {} : { tolerance }) },
      },
      {
        onSuccess: () => {
          say(`The study of ${instrument.tag} is kept.`);
          onClose();
        },
      },
    );
  return (
    <Dialog title={`Gauge study of ${instrument.tag}`} isOpen onClose={onClose} width="wide">
      <CommandForm
        problem={record.error}
        isPending={record.isPending}
        submit="Keep the study"
        onSubmit={() => wrong.length === 0 && send()}
        onCancel={onClose}
      >
        <div className="field-grid">
          <TextField
            name="title"
            label="What was measured"
            value={title}
            onChange={(text) => set({ title: text })}
            isRequired
          />
          <DateField
            name="heldOn"
            label="Held on"
            value={heldOn}
            onChange={(text) => set({ heldOn: text })}
            isRequired
          />
          <TextField
            name="unit"
            label="Unit"
            value={unit}
            onChange={(text) => set({ unit: text })}
            size={8}
            isRequired
          />
          <DecimalField
            name="tolerance"
            label="Tolerance"
            hint="From the lower to the upper limit, where there is one"
            value={tolerance}
            onChange={(text) => set({ tolerance: text })}
          />
        </div>
        <TextField
          name="cells"
          label="Readings"
          hint="One line for each appraiser and part: appraiser, part, then every trial; paste from a spreadsheet or type with commas"
          lines={12}
          value={draft.text}
          onChange={(text) => set({ text })}
          isRequired
        />
        <p role="status" className="small">
          {wrong.length > 0
            ? `${wrong.slice(0, 3).join('. ')}${wrong.length > 3 ? ` and ${wrong.length - 3} more` : ''}`
            : cells.length > 0
              ? `${countOf(count('appraiser'), 'appraiser')}, ${countOf(count('part'), 'part')}, ${countOf(cells[0]?.readings.length ?? 0, 'trial')}`
              : ''}
        </p>
      </CommandForm>
    </Dialog>
  );
}
