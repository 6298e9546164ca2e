import { vendorPieceOperations } from '@hubwright/contracts/vendors/piece-operations';
import { returnConditions } from '@hubwright/contracts/vendors/pieces';
import { useState } from 'react';
import { Checkbox } from '../../ui/Checkbox.tsx';
import { FormThenSign } from '../../ui/FormThenSign.tsx';
import { Select } from '../../ui/Select.tsx';
import type { Signer } from '../../ui/SignCommand.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import { PieceCounts, piecesOf } from './PieceCounts.tsx';
import { conditionWords, type VendorOrder } from './vendors.ts';

type Condition = (typeof returnConditions)[number];

/** Receiving inspection of pieces that came back by themselves, also after their part was inspected. */
export function TakeBackPieces(props: { order: VendorOrder; signer: Signer; onClose: () => void }) {
  const { order, signer, onClose } = props;
  const [counts, setCounts] = useState<Readonly<Record<string, string>>>({});
  const [condition, setCondition] = useState<Condition | null>(null);
  const [text, setText] = useState({ certificate: '', note: '' });
  const [paperCame, setPaperCame] = useState(false);
  const came = piecesOf(order, counts);
  const pieces = came.map(({ lotId, quantity }) => ({ lotId, quantity, condition, note: text.note }));
  return (
    <FormThenSign
      title={`Take back pieces of ${order.number}`}
      onClose={onClose}
      signing={{
        op: vendorPieceOperations.takeBackPieces,
        input: { orderId: order.id, pieces, certificate: text.certificate, paperCame } as never,
        version: order.version,
        signer,
        summary: (
          <p>
            <strong>{condition ? conditionWords[condition] : ''}:</strong>{' '}
            {came.map(({ quantity, part, lotCode }) => `${quantity} × ${part} (${lotCode})`).join(', ')}, certificate{' '}
            {text.certificate}; {order.paperDue} {paperCame ? 'is here' : 'is not here'}
          </p>
        ),
        onSigned: ({ state, held }) => {
          const where = held > 0 ? `${held} are held for their owner: the kits of the unit are closed` : 'in the rack';
          say(`The pieces are back, ${where}. ${order.number} is ${state === 'back' ? 'back' : 'still out in part'}.`);
          onClose();
        },
      }}
    >
      <PieceCounts order={order} label="came back" counts={counts} onChange={setCounts} />
      <Select
        name="pieces/0/condition"
        label="How they came back"
        hint="One form for each condition: what is not good waits for an inspector again"
        placeholder="Look at them, then choose"
        value={condition}
        onChange={(value) => setCondition(value as Condition)}
        choices={returnConditions.map((value) => ({ value, text: conditionWords[value] }))}
        isRequired
      />
      <TextField
        name="certificate"
        label="Vendor’s certificate or release number"
        value={text.certificate}
        onChange={(certificate) => setText({ ...text, certificate })}
        isRequired
      />
      <Checkbox name="paperCame" isSelected={paperCame} onChange={setPaperCame}>
        Came back with them: {order.paperDue}
      </Checkbox>
      <TextField name="note" label="What was seen" value={text.note} onChange={(note) => setText({ ...text, note })} />
    </FormThenSign>
  );
}
