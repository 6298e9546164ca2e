import { lossKinds, lossOperations } from '@hubwright/contracts/vendors/loss-operations';
import { useState } from 'react';
import { FormThenSign } from '../../ui/FormThenSign.tsx';
import { Select } from '../../ui/Select.tsx';
import type { Signer } from '../../ui/SignCommand.tsx';
import { TextField } from '../../ui/TextField.tsx';
import { say } from '../../ui/toasts.tsx';
import { useWitness } from '../../ui/witness.tsx';
import { PieceCounts, piecesOf } from './PieceCounts.tsx';
import { lossWords, titleOf, type VendorOrder } from './vendors.ts';

interface Props {
  order: VendorOrder;
  signer: Signer;
  onClose: () => void;
}

const nothingTold = { how: null as (typeof lossKinds)[number] | null, vendorPaper: '', reason: '' };

function Told({ told, onChange }: { told: typeof nothingTold; onChange: (told: typeof nothingTold) => void }) {
  return (
    <>
      <Select
        name="how"
        label="What became of it"
        placeholder="Choose what the vendor says"
        value={told.how}
        onChange={(how) => onChange({ ...told, how: how as typeof told.how })}
        choices={lossKinds.map((value) => ({ value, text: lossWords[value] }))}
        isRequired
      />
      <TextField
        name="vendorPaper"
        label="The vendor’s paper"
        hint="Letter or report in which the vendor says so"
        value={told.vendorPaper}
        onChange={(vendorPaper) => onChange({ ...told, vendorPaper })}
        isRequired
      />
      <TextField
        name="reason"
        label="What happened"
        value={told.reason}
        onChange={(reason) => onChange({ ...told, reason })}
        isRequired
      />
    </>
  );
}

const ownersOf = (owners: readonly string[]) => `Tell ${owners.join(' and ')}: it was theirs.`;

/** Pieces of a rack that the vendor lost or destroyed; somebody else who read the vendor's paper signs too. */
export function WriteOffPieces({ order, signer, onClose }: Props) {
  const [told, setTold] = useState(nothingTold);
  const [counts, setCounts] = useState<Readonly<Record<string, string>>>({});
  const witness = useWitness();
  const pieces = piecesOf(order, counts);
  return (
    <FormThenSign
      title={`Write off pieces of ${order.number}`}
      onClose={onClose}
      signing={{
        op: lossOperations.writeOffPieces,
        // The witness is asked for beside the signature.
        input: {
          orderId: order.id,
          pieces: pieces.map(({ lotId, quantity }) => ({ lotId, quantity })),
          ...told,
        } as never,
        version: order.version,
        signer,
        second: witness,
        summary: (
          <p>
            <strong>{told.how ? lossWords[told.how] : ''}:</strong>{' '}
            {pieces.map(({ quantity, part, lotCode }) => `${quantity} × ${part} (${lotCode})`).join(', ')} at{' '}
            {order.vendor.name}, by {told.vendorPaper}: {told.reason}
          </p>
        ),
        onSigned: ({ owners, asked }) => {
          say(`They are written off. ${ownersOf(owners)}${asked > 0 ? ` Asked of stock instead: ${asked}.` : ''}`);
          onClose();
        },
      }}
    >
      <PieceCounts order={order} label="lost" counts={counts} onChange={setCounts} />
      <Told told={told} onChange={setTold} />
    </FormThenSign>
  );
}

/** A part of a unit that the vendor lost or destroyed: an inspector says so, and then rejects it by a finding. */
export function WriteOffPart({ order, signer, onClose }: Props) {
  const [told, setTold] = useState(nothingTold);
  const [lineId, setLine] = useState<string | null>(null);
  const out = order.lines.filter(({ condition }) => condition === null);
  const line = out.find(({ id }) => id === lineId);
  return (
    <FormThenSign
      title={`Write off a part of ${order.number}`}
      onClose={onClose}
      signing={{
        op: lossOperations.writeOffPart,
        input: { orderId: order.id, lineId: lineId ?? '', ...told } as never,
        version: order.version,
        signer,
        summary: (
          <p>
            <strong>{told.how ? lossWords[told.how] : ''}:</strong> {line ? titleOf(line) : ''} at {order.vendor.name},
            by {told.vendorPaper}: {told.reason}
          </p>
        ),
        onSigned: ({ owners }) => {
          say(`It is written off: reject it by a finding, and fit a replacement. ${ownersOf(owners)}`);
          onClose();
        },
      }}
    >
      <Select
        name="lineId"
        label="Part"
        placeholder="Choose the part"
        value={lineId}
        onChange={setLine}
        choices={out.map((each) => ({ value: each.id, text: titleOf(each) }))}
        isRequired
      />
      <Told told={told} onChange={setTold} />
    </FormThenSign>
  );
}
