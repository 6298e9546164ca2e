import { sourceClassTitles } from '@hubwright/contracts/inventory/operations';
import { StateMark } from '../../ui/StateMark.tsx';
import type { Customer } from './customers.ts';

export function CustomerFacts({ customer }: { customer: Customer }) {
  const facts: readonly (readonly [string, string])[] = [
    ['Code', customer.code],
    ['Whom to call', customer.contactName],
    ['Telephone', customer.phone],
    ['E-mail', customer.email],
    ['Address', customer.address],
    ['Accepts parts that are', customer.acceptedSources.map((source) => sourceClassTitles[source]).join(', ')],
  ];
  return (
    <>
      {customer.unpaidHold ? <StateMark state="hold" word="has unpaid bills: nothing leaves without a reason" /> : null}
      <dl className="facts">
        {facts.map(([title, text]) => (
          <div key={title}>
            <dt>{title}</dt>
            <dd>{text || 'not told'}</dd>
          </div>
        ))}
      </dl>
    </>
  );
}
