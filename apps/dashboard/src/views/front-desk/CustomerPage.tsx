import { customerOperations } from '@hubwright/contracts/customers/operations';
import { ownerOperations } from '@hubwright/contracts/customers/owner-operations';
import { readingsOperations } from '@hubwright/contracts/customers/readings-operations';
import { workOrderOperations } from '@hubwright/contracts/work-orders/operations';
import { useSuspenseQuery } from '@tanstack/react-query';
import { useParams } from '@tanstack/react-router';
import { useState } from 'react';
import { useMay } from '../../api/me.ts';
import { usePages } from '../../api/pages.ts';
import { AircraftMoves } from '../../features/customers/AircraftMoves.tsx';
import { AircraftTable } from '../../features/customers/AircraftTable.tsx';
import { AddAircraft } from '../../features/customers/add-aircraft.tsx';
import { CustomerFacts } from '../../features/customers/CustomerFacts.tsx';
import { ChangeCustomer } from '../../features/customers/change-customer.tsx';
import { type Aircraft, type Customer, customerQuery } from '../../features/customers/customers.ts';
import { Meters } from '../../features/customers/Meters.tsx';
import { MoveAircraft } from '../../features/customers/move-aircraft.tsx';
import { RecordReading } from '../../features/customers/record-reading.tsx';
import { CustomerLetters } from '../../features/reminders/CustomerLetters.tsx';
import { OrderTable } from '../../features/work-orders/OrderTable.tsx';
import { useToday } from '../../format/use-today.ts';
import { ViewHead } from '../../shell/ViewHead.tsx';
import { Button } from '../../ui/Button.tsx';
import { Link } from '../../ui/Link.tsx';
import { PagesFrame } from '../../ui/Pages.tsx';

function Fleet({ customer }: { customer: Customer }) {
  const mayAdd = useMay(customerOperations.addAircraft);
  const mayRead = useMay(customerOperations.recordReading);
  const mayRecord = useMay(readingsOperations.recordReadings);
  const mayMove = useMay(ownerOperations.moveAircraft);
  const today = useToday();
  const [moved, setMoved] = useState<Aircraft>();
  const [isAdding, setAdding] = useState(false);
  const [read, setRead] = useState<Aircraft>();
  const [looked, setLooked] = useState<Aircraft>();
  return (
    <section className="sheet stack" aria-labelledby="aircraft">
      <div className="row between">
        <h2 id="aircraft">Aircraft</h2>
        <div className="row">
          {mayRecord ? <Link href={`/customers/${customer.id}/readings`}>Enter readings of many</Link> : null}
          <Link href={`/customers/${customer.id}/tables`}>Tables of their fleet</Link>
        </div>
      </div>
      <AircraftTable
        aircraft={customer.aircraft}
        onRead={mayRead ? setRead : undefined}
        onMeters={setLooked}
        onMove={mayMove ? setMoved : undefined}
        tools={mayAdd ? <Button onPress={() => setAdding(true)}>Add an aircraft</Button> : null}
      />
      <AircraftMoves customerId={customer.id} />
      {moved ? <MoveAircraft aircraft={moved} today={today} onClose={() => setMoved(undefined)} /> : null}
      {isAdding ? <AddAircraft customerId={customer.id} onClose={() => setAdding(false)} /> : null}
      {read ? <RecordReading aircraft={read} today={today} onClose={() => setRead(undefined)} /> : null}
      {looked ? (
        <Meters aircraft={looked} today={today} mayWrite={mayRead} onClose={() => setLooked(undefined)} />
      ) : null}
    </section>
  );
}

function Orders({ customer }: { customer: Customer }) {
  const orders = usePages(workOrderOperations.listWorkOrders, { customerId: customer.id });
  return (
    <section className="sheet stack" aria-labelledby="orders">
      <h2 id="orders">Work orders</h2>
      <PagesFrame of={orders}>
        <OrderTable rows={orders.rows} tools={null} />
      </PagesFrame>
    </section>
  );
}

export function CustomerPage() {
  const { customerId = '' } = useParams({ strict: false }) as { customerId?: string };
  const customer = useSuspenseQuery(customerQuery(customerId)).data;
  const mayChange = useMay(customerOperations.changeCustomer);
  const [isChanging, setChanging] = useState(false);
  return (
    <>
      <ViewHead
        title={`Customer ${customer.code}`}
        question={`${customer.name}: what do they fly, and what have we of theirs?`}
      >
        {mayChange ? <Button onPress={() => setChanging(true)}>Change</Button> : null}
      </ViewHead>
      <div className="stack">
        <div className="sheet stack">
          <CustomerFacts customer={customer} />
        </div>
        <Fleet customer={customer} />
        <Orders customer={customer} />
        <section className="sheet stack" aria-labelledby="letters">
          <h2 id="letters">Reminder letters</h2>
          <p>
            <Link href={`/coming-due?customerId=${customer.id}&days=1095`}>Their units by when they come due</Link>
          </p>
          <CustomerLetters customerId={customer.id} />
        </section>
      </div>
      {isChanging ? <ChangeCustomer customer={customer} onClose={() => setChanging(false)} /> : null}
    </>
  );
}
