import { type QuoteKind, quoteOperations } from '@hubwright/contracts/quotes/operations';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { useShop } from '../../format/shop-context.tsx';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { Refusal } from '../../ui/Refusal.tsx';
import { Skeleton } from '../../ui/Skeleton.tsx';
import { StateMark } from '../../ui/StateMark.tsx';
import { OutsideServices, type Service, servicesToSend } from './outside-services.tsx';
import { PricedSheet } from './PricedSheet.tsx';
import { kindWords, priceQuery, theKind } from './quotes.ts';

export interface WriteQuoteProps {
  order: { id: string; number: string };
  kind: QuoteKind;
  onWritten: (quoteId: string) => void;
  onClose: () => void;
}

/** What today's cost makes of the work; only outside services and the days it will take are added by hand. */
function Preview({ order, kind }: Pick<WriteQuoteProps, 'order' | 'kind'>) {
  const price = useQuery(priceQuery(order.id, kind));
  if (price.error) return <Refusal problem={price.error} />;
  if (!price.data) return <Skeleton lines={4} />;
  return (
    <div className="stack">
      {price.data.missing.map((sentence) => (
        <StateMark key={sentence} state="stop" word={sentence} />
      ))}
      <PricedSheet of={price.data} caption={`${kindWords[kind]} for ${order.number} at today’s cost`} />
    </div>
  );
}

export function WriteQuote({ order, kind, onWritten, onClose }: WriteQuoteProps) {
  const write = useCommand(quoteOperations.writeQuote);
  const { currency } = useShop();
  const [services, setServices] = useState<Service[]>([]);
  const [promiseDays, setPromiseDays] = useState('');
  const input = {
    workOrderId: order.id,
    kind,
    outsideServices: servicesToSend(services, currency),
    ...(promiseDays === '' ? {} : { promiseDays: Number(promiseDays) }),
  };
  return (
    <Dialog title={`Write ${theKind[kind]} for ${order.number}`} width="wide" isOpen onClose={onClose}>
      <CommandForm
        problem={write.error}
        isPending={write.isPending}
        submit="Write it"
        onCancel={onClose}
        onSubmit={() => write.mutate({ input }, { onSuccess: ({ id }) => onWritten(id) })}
      >
        <Preview order={order} kind={kind} />
        <OutsideServices services={services} onChange={setServices} />
        {kind === 'firm' ? (
          <DecimalField
            name="promiseDays"
            label="Ready within"
            hint="Counted from the customer’s yes; the yes then sets the promise"
            unit="days"
            decimals={0}
            value={promiseDays}
            onChange={setPromiseDays}
          />
        ) : null}
      </CommandForm>
    </Dialog>
  );
}
