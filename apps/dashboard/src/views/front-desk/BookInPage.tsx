import { useState } from 'react';
import { ReceivedSheet } from '../../features/work-orders/ReceivedSheet.tsx';
import { type Received, ReceiveUnit } from '../../features/work-orders/receive-unit.tsx';
import { Button, LinkButton } from '../../ui/Button.tsx';

export function BookInPage() {
  const [received, setReceived] = useState<Received>();
  return (
    <div className="sheet">
      {received ? (
        <ReceivedSheet received={received}>
          <LinkButton href={`/desk?unit=${received.id}`} weight="next">
            Write the estimate
          </LinkButton>
          <LinkButton href={`/work-orders/${received.id}`}>Open the work order</LinkButton>
          <Button onPress={() => setReceived(undefined)}>Book the next one in</Button>
        </ReceivedSheet>
      ) : (
        <ReceiveUnit onReceived={setReceived} />
      )}
    </div>
  );
}
