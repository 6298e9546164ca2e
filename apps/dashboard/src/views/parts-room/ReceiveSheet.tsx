import { partOperations } from '@hubwright/contracts/inventory/part-operations';
import { receivingOperations } from '@hubwright/contracts/inventory/receiving-operations';
import { heldOperations } from '@hubwright/contracts/purchasing/held-operations';
import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { addressOf } from '../../api/address.ts';
import { useMay } from '../../api/me.ts';
import type { Pages } from '../../api/pages.ts';
import { queryFor } from '../../api/query.ts';
import { type LabelFacts, LotLabel } from '../../features/inventory/LotLabel.tsx';
import { type Part, partQuery } from '../../features/inventory/lots.ts';
import type { Expecting } from '../../features/inventory/receive-draft.ts';
import { ReceiveForm } from '../../features/inventory/receive-lot.tsx';
import { HoldDialog } from '../../features/purchasing/hold-delivery.tsx';
import type { Expected } from '../../features/purchasing/orders.ts';
import { Button, LinkButton } from '../../ui/Button.tsx';
import { EmptyState } from '../../ui/EmptyState.tsx';
import { PrintLabel } from '../../ui/PrintLabel.tsx';
import { type Found, SearchBox } from '../../ui/SearchBox.tsx';
import { Skeleton } from '../../ui/Skeleton.tsx';

function expectingOf(part: Part, line: Expected | undefined): Expecting {
  return {
    partId: part.id,
    number: part.number,
    description: part.description,
    issueUnit: part.issueUnit,
    certificateRequired: part.certificateRequired,
    serialised: part.serialised,
    ages: part.shelfLifeMonths !== null,
    line: line ? { id: line.id, orderNumber: line.order.number, open: line.open } : undefined,
  };
}

/** The lot that was just made: its label, and what comes next. */
function Received({ lot, onNext }: { lot: { id: string } & LabelFacts; onNext: () => void }) {
  return (
    <div className="stack" role="status">
      <h2>Received into quarantine</h2>
      <LotLabel label={lot} />
      <p>Label the bag with this code. Someone authorised for stock acceptance judges it before it can be used.</p>
      <div className="row">
        <PrintLabel
          text="Print the label"
          hrefOf={(form) => addressOf(receivingOperations.lotLabelsPdf, { lotId: lot.id, form })}
          weight="next"
        />
        <LinkButton href={`/lots/${lot.id}`}>Open {lot.code}</LinkButton>
        <Button onPress={onNext}>Receive more</Button>
      </div>
    </div>
  );
}

/** Which part came, when there is no order for it. */
function PartChoice({ picked, onPick }: { picked: Found | null; onPick: (thing: Found | null) => void }) {
  return (
    <SearchBox
      label="Which part came"
      hint="Any piece of its number or description"
      picked={picked}
      onPick={onPick}
      search={(text) => queryFor(partOperations.listParts, { search: text, limit: 20 })}
      found={({ rows }) => rows.map(({ id, number, description }) => ({ id, name: number, detail: description }))}
      isRequired
    />
  );
}

export interface ReceiveSheetProps {
  expected: Pages<Expected>;
  /** The order line the box belongs to; empty when it came without an order. */
  lineId: string;
  onClose: () => void;
}

/** One box opened: what was expected, what was found, and the label it gets. */
export function ReceiveSheet({ expected, lineId, onClose }: ReceiveSheetProps) {
  const [line] = useState(() => expected.rows.find((row) => row.id === lineId));
  const current = expected.rows.find((row) => row.id === lineId) ?? line;
  const [chosen, setChosen] = useState<Found | null>(null);
  const [lot, setLot] = useState<{ id: string } & LabelFacts>();
  const mayHold = useMay(heldOperations.holdDelivery);
  const [isHolding, setHolding] = useState(false);
  const partId = lineId === '' ? (chosen?.id ?? '') : (current?.part.id ?? '');
  const part = useQuery({ ...partQuery(partId), enabled: partId !== '' }).data?.rows[0];
  if (lot) return <div className="sheet">{<Received lot={lot} onNext={onClose} />}</div>;
  if (lineId !== '' && !current) {
    return (
      <div className="sheet">
        {expected.isFirst ? (
          <Skeleton />
        ) : (
          <EmptyState title="This line is not expected any more">Choose another line.</EmptyState>
        )}
      </div>
    );
  }
  return (
    <div className="sheet stack">
      <h2>{current ? `Receive ${current.part.number}, ${current.order.number}` : 'Receive without an order'}</h2>
      {current ? (
        <p className="soft">
          {current.part.description}, from {current.supplier.name}
        </p>
      ) : (
        <PartChoice picked={chosen} onPick={setChosen} />
      )}
      {mayHold ? (
        <div className="row">
          <Button weight="quiet" onPress={() => setHolding(true)}>
            {current ? 'Another part, or too many: hold it' : 'Never ordered: hold it'}
          </Button>
        </div>
      ) : null}
      {isHolding ? <HoldDialog line={current} onClose={() => setHolding(false)} /> : null}
      {part ? (
        <ReceiveForm
          key={part.id}
          expecting={expectingOf(part, current)}
          partClass={part.class}
          onReceived={setLot}
          onCancel={onClose}
        />
      ) : null}
    </div>
  );
}
