import { quoteOperations } from '@hubwright/contracts/quotes/operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { minorDigits, moneyText, parseMoney } from '../../format/money.ts';
import { Amount } from '../../format/values.tsx';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { say } from '../../ui/toasts.tsx';
import { AnswerFields, answerToSend, noAnswer } from './answer-fields.tsx';
import { type QuoteRow, theKind } from './quotes.ts';

/** A named person's yes, up to an amount. An evaluation has a cap the customer names; other offers are taken whole. */
export function ApproveQuote({ quote, onClose }: { quote: QuoteRow; onClose: () => void }) {
  const approve = useCommand(quoteOperations.approveQuote);
  const [answer, setAnswer] = useState(noAnswer);
  const { currency, totalMinor } = quote;
  const isCap = quote.kind === 'estimate';
  const [amount, setAmount] = useState(isCap ? '' : moneyText({ currency, minor: totalMinor }));
  const input = {
    quoteId: quote.id,
    ...answerToSend(answer),
    amount: { currency, minor: parseMoney(amount, currency) ?? Number.NaN },
  };
  return (
    <Dialog title={`Yes to ${quote.number}`} isOpen onClose={onClose}>
      <CommandForm
        problem={approve.error}
        isPending={approve.isPending}
        submit={isCap ? 'Record the approved evaluation' : 'Record the yes'}
        onCancel={onClose}
        onSubmit={() =>
          approve.mutate(
            { input, version: quote.version },
            {
              onSuccess: () => {
                say(`The yes to ${quote.number} is recorded.`);
                onClose();
              },
            },
          )
        }
      >
        <p>
          {quote.customer.name}, {theKind[quote.kind]} over <Amount minor={totalMinor} currency={currency} />
        </p>
        <AnswerFields answer={answer} onChange={setAnswer} />
        <DecimalField
          name="amount"
          label={isCap ? 'Evaluation approved up to' : 'Approved amount'}
          hint={isCap ? 'The cap this person named; firm quote and yes come after inspection' : 'The total, or above'}
          unit={currency}
          decimals={minorDigits(currency)}
          value={amount}
          onChange={setAmount}
          isRequired
        />
      </CommandForm>
    </Dialog>
  );
}
