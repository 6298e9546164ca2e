import { useQuery } from '@tanstack/react-query';
import { Link } from '../../ui/Link.tsx';
import { customerQuery } from './customers.ts';

/** Whom to call about a unit, with the number to dial. */
export function CallLine({ customerId, name }: { customerId: string; name: string }) {
  const customer = useQuery(customerQuery(customerId)).data;
  return (
    <p>
      <Link href={`/customers/${customerId}`}>{name}</Link>
      {customer?.contactName ? `, ${customer.contactName}` : ''}
      {customer?.phone ? (
        <>
          , <a href={`tel:${customer.phone}`}>{customer.phone}</a>
        </>
      ) : null}
    </p>
  );
}
