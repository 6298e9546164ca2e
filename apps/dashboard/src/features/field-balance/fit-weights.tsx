import { fieldBalanceOperations } from '@hubwright/contracts/field-balance/operations';
import type { FieldAnswer } from '@hubwright/contracts/field-balance/shapes';
import { useSuspenseQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { Button } from '../../ui/Button.tsx';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { Select } from '../../ui/Select.tsx';
import { say } from '../../ui/toasts.tsx';
import { type FieldBalance, hardwareQuery, placeChoices } from './field-balance.ts';

interface Draft {
  readonly place: string | null;
  readonly lotCode: string | null;
  readonly pieces: string;
  /** What was proposed for this row. */
  readonly hint: string;
}
const nothing: Draft = { place: null, lotCode: null, pieces: '', hint: '' };

/** Places and parts as proposed; which lot was taken and how many pieces went in is for the person to say. */
function draftsOf(proposal: FieldAnswer['beside'] | undefined): readonly Draft[] {
  const rows =
    proposal?.fillings.flatMap(({ place, pieces }) =>
      pieces.map(({ count, partNumber }) => ({ ...nothing, place, hint: `${count} × ${partNumber} proposed` })),
    ) ?? [];
  return rows.length > 0 ? rows : [nothing];
}

/** Pieces from lots of the stock into places; the ledger moves with them. */
export function FitWeights({ balance, onClose }: { balance: FieldBalance; onClose: () => void }) {
  const fit = useCommand(fieldBalanceOperations.fitFieldWeights);
  const hardware = useSuspenseQuery(hardwareQuery).data.rows;
  const [drafts, setDrafts] = useState(() => draftsOf(balance.answer?.beside));
  const places = placeChoices(balance);
  const lots = hardware.flatMap(({ part, mass, lots: there }) =>
    there.map(({ code, onHand }) => ({ value: code, text: `${part.number}, ${mass} g: ${code}, ${onHand} here` })),
  );
  const change = (at: number, changes: Partial<Draft>) =>
    setDrafts(drafts.map((one, index) => (index === at ? { ...one, ...changes } : one)));
  const send = () => {
    const weights = drafts.map(({ place, lotCode, pieces }) => ({
      ...{ place: place ?? '', lotCode: lotCode ?? '', pieces: Number(pieces) },
    }));
    const done = () => {
      say('The weights are on record; run again with them.');
      onClose();
    };
    fit.mutate({ input: { fieldBalanceId: balance.id, weights }, version: balance.version }, { onSuccess: done });
  };
  return (
    <Dialog title="Weights fitted" isOpen onClose={onClose} width="wide">
      <CommandForm problem={fit.error} isPending={fit.isPending} submit="Fit them" onSubmit={send} onCancel={onClose}>
        {drafts.map((draft, at) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: rows have no name of their own
          <div key={at} className="row">
            <Select
              name={`weights/${at}/place`}
              label="Place"
              value={draft.place}
              onChange={(place) => change(at, { place })}
              choices={places}
              isRequired
            />
            <Select
              name={`weights/${at}/lotCode`}
              label="From lot"
              hint={draft.hint}
              value={draft.lotCode}
              onChange={(lotCode) => change(at, { lotCode })}
              choices={lots}
              isRequired
            />
            <DecimalField
              name={`weights/${at}/pieces`}
              label="Pieces"
              decimals={0}
              value={draft.pieces}
              onChange={(pieces) => change(at, { pieces })}
              isRequired
            />
          </div>
        ))}
        <div>
          <Button weight="quiet" onPress={() => setDrafts([...drafts, nothing])}>
            Another weight
          </Button>
        </div>
      </CommandForm>
    </Dialog>
  );
}
