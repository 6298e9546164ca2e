import { DecimalField } from '../../ui/DecimalField.tsx';
import type { VendorOrder } from './vendors.ts';

type Piece = VendorOrder['pieces'][number];

/** What was entered, for those with a number; what is no number is left for the server to refuse where it stands. */
export function piecesOf(order: VendorOrder, counts: Readonly<Record<string, string>>): Piece[] {
  return order.pieces.flatMap((piece) => {
    const count = counts[piece.lotId] ?? '';
    return count === '' || Number(count) === 0 ? [] : [{ ...piece, quantity: Number(count) }];
  });
}

/** How many of each lot that is still out; empty for none. */
export function PieceCounts(props: {
  order: VendorOrder;
  label: string;
  counts: Readonly<Record<string, string>>;
  onChange: (counts: Readonly<Record<string, string>>) => void;
}) {
  const { order, label, counts, onChange } = props;
  return (
    <>
      {order.pieces.map(({ lotId, lotCode, part, quantity }, index) => (
        <DecimalField
          key={lotId}
          name={`pieces/${index}/quantity`}
          label={`How many ${label}: ${part} (${lotCode}), ${quantity} out`}
          decimals={0}
          value={counts[lotId] ?? ''}
          onChange={(text) => onChange({ ...counts, [lotId]: text })}
        />
      ))}
    </>
  );
}
