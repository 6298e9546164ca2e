import { quoteOperations } from '@hubwright/contracts/quotes/operations';
import { useState } from 'react';
import { useCommand } from '../../api/command.ts';
import { formatMoney, minorDigits, parseMoney } from '../../format/money.ts';
import { Checkbox, RadioList } from '../../ui/Checkbox.tsx';
import { CommandForm } from '../../ui/CommandForm.tsx';
import { DecimalField } from '../../ui/DecimalField.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { say } from '../../ui/toasts.tsx';
import { AnswerFields, answerToSend, noAnswer } from './answer-fields.tsx';
import type { QuoteRow } from './quotes.ts';

type Path = 'return' | 'purchase' | 'scrap';
const paths: readonly { value: Path; text: string }[] = [
  { value: 'return', text: 'Goes back in pieces, tagged unserviceable' },
  { value: 'purchase', text: 'The shop buys it' },
  { value: 'scrap', text: 'Scrapped' },
];

/** A no is a path too: where the unit goes, and whether the evaluation is charged. Over-and-above moves nothing. */
export function DeclineQuote({ quote, onClose }: { quote: QuoteRow; onClose: () => void }) {
  const decline = useCommand(quoteOperations.declineQuote);
  const [answer, setAnswer] = useState(noAnswer);
  const [path, setPath] = useState<Path | null>(null);
  const [waiveFee, setWaiveFee] = useState(false);
  const [price, setPrice] = useState('');
  const { currency } = quote;
  const isMore = quote.kind === 'over-and-above';
  const input = {
    quoteId: quote.id,
    ...answerToSend(answer),
    waiveFee,
    ...(path === null ? {} : { path }),
    ...(path === 'purchase' ? { purchasePrice: { currency, minor: parseMoney(price, currency) ?? Number.NaN } } : {}),
  };
  const done = (fee: number) => {
    say(
      fee > 0
        ? `The no is recorded; the evaluation costs ${formatMoney({ currency, minor: fee })}.`
        : 'The no is recorded.',
    );
    onClose();
  };
  return (
    <Dialog title={`No to ${quote.number}`} isOpen onClose={onClose}>
      <CommandForm
        problem={decline.error}
        isPending={decline.isPending}
        submit="Record the no"
        onCancel={onClose}
        onSubmit={() =>
          decline.mutate({ input, version: quote.version }, { onSuccess: (reply) => done(reply.evaluationFeeMinor) })
        }
      >
        <AnswerFields answer={answer} onChange={setAnswer} />
        {isMore ? (
          <p>What was found stays as it is; an inspector says what that means for the unit.</p>
        ) : (
          <RadioList
            name="path"
            label="What happens to the unit"
            value={path}
            onChange={setPath}
            choices={paths}
            isRequired
          />
        )}
        {path === 'purchase' ? (
          <DecimalField
            name="purchasePrice"
            label="Bought for"
            unit={currency}
            decimals={minorDigits(currency)}
            value={price}
            onChange={setPrice}
            isRequired
          />
        ) : null}
        {isMore ? null : (
          <Checkbox isSelected={waiveFee} onChange={setWaiveFee}>
            The evaluation is not charged
          </Checkbox>
        )}
      </CommandForm>
    </Dialog>
  );
}
