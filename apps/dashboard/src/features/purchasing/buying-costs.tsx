import { offerOperations } from '@hubwright/contracts/purchasing/offer-operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { say } from '../../ui/toasts.tsx';
import type { Costs } from './suppliers.ts';

/** What suggestions reckon with, in the shop's currency. */
export function CostFacts({ costs, currency }: { costs: Costs; currency: string }) {
  return (
    <dl className="facts">
      <div>
        <dt>An order costs</dt>
        <dd>
          {costs.perOrder} {currency}
        </dd>
      </div>
      <div>
        <dt>Keeping a piece for a year</dt>
        <dd>{Math.round(Number(costs.keepingRate) * 1000) / 10} % of its price</dd>
      </div>
      <div>
        <dt>A missing piece costs</dt>
        <dd>
          {costs.missingPiece} {currency}
        </dd>
      </div>
      <div>
        <dt>Somebody looks every</dt>
        <dd>{costs.reviewDays} days</dd>
      </div>
    </dl>
  );
}

export function CostsDialog({ costs, onClose }: { costs: Costs; onClose: () => void }) {
  const save = useCommand(offerOperations.setBuyingCosts);
  const [draft, setDraft] = useState({ ...costs, reviewDays: String(costs.reviewDays) });
  const put = (key: 'perOrder' | 'keepingRate' | 'missingPiece' | 'reviewDays') => (text: string) =>
    setDraft({ ...draft, [key]: text });
  const send = () => {
    const { perOrder, keepingRate, missingPiece, reviewDays } = draft;
    save.mutate(
      { input: { perOrder, keepingRate, missingPiece, reviewDays: Number(reviewDays) }, version: costs.version },
      {
        onSuccess: () => {
          say('Suggestions reckon with this from now on.');
          onClose();
        },
      },
    );
  };
  return (
    <Dialog title="What buying reckons with" isOpen onClose={onClose}>
      <CommandForm problem={save.error} isPending={save.isPending} submit="Keep" onSubmit={send} onCancel={onClose}>
        <DecimalField
          name="perOrder"
          label="An order costs"
          value={draft.perOrder}
          onChange={put('perOrder')}
          isRequired
        />
        <DecimalField
          name="keepingRate"
          label="Keeping a piece for a year"
          hint="A share of its price, such as 0.2"
          value={draft.keepingRate}
          onChange={put('keepingRate')}
          isRequired
        />
        <DecimalField
          name="missingPiece"
          label="A missing piece costs"
          hint="What a unit costs that waits for it"
          value={draft.missingPiece}
          onChange={put('missingPiece')}
          isRequired
        />
        <DecimalField
          name="reviewDays"
          label="Days between two looks"
          decimals={0}
          value={draft.reviewDays}
          onChange={put('reviewDays')}
          isRequired
        />
      </CommandForm>
    </Dialog>
  );
}
