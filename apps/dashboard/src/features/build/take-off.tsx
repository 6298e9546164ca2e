import { kitsOperations } from '@hubwright/contracts/kits/operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { countOf } from '../../format/numbers.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { say } from '../../ui/toasts.tsx';
import styles from './build.module.css';
import type { BuildSheet, SheetLine } from './build-sheet.ts';

/** What the list says comes off at a line; as-needed lines come off only where counted. */
function listed(line: SheetLine): string {
  return line.minimum === null ? `${line.required} by the list` : 'as needed: none unless counted';
}

/** Everything that came off goes into the unit's rack as the list says; only what differs is counted. */
export function TakeOff({ sheet, kitId, onClose }: { sheet: BuildSheet; kitId: string; onClose: () => void }) {
  const takeOff = useCommand(kitsOperations.takeOff);
  const [counts, setCounts] = useState<Readonly<Record<string, string>>>({});
  const lines = sheet.positions.filter((line) => line.kitId === kitId);
  const counted = Object.entries(counts)
    .filter(([, text]) => text !== '')
    .map(([lineId, text]) => ({ lineId, quantity: Number(text) }));
  return (
    <Dialog title={`What came off ${sheet.workOrderNumber}`} isOpen onClose={onClose} width="wide">
      <CommandForm
        problem={takeOff.error}
        isPending={takeOff.isPending}
        submit="Put it all in the rack"
        onCancel={onClose}
        onSubmit={() =>
          takeOff.mutate(
            { input: { kitId, counted } },
            {
              onSuccess: (reply) => {
                say(`${countOf(reply.rack.length, 'tag')} in the rack.`);
                onClose();
              },
            },
          )
        }
      >
        <p>Leave an entry empty where the unit held what the list says. Write 0 where nothing was there.</p>
        <div className={styles.counts}>
          {lines.map((line) => (
            <DecimalField
              key={line.lineId}
              label={line.position}
              hint={`${line.part.number} ${line.part.description}, ${listed(line)}`}
              unit={line.part.issueUnit}
              decimals={0}
              size={5}
              value={counts[line.lineId] ?? ''}
              onChange={(text) => setCounts({ ...counts, [line.lineId]: text })}
            />
          ))}
        </div>
      </CommandForm>
    </Dialog>
  );
}
