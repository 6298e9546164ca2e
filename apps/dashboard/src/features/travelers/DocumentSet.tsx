import { documentKindTitles } from '@hubwright/contracts/manuals/words';
import { documentSetOperations } from '@hubwright/contracts/work-orders/document-set-operations';
import { useQuery } from '@tanstack/react-query';
import { queryFor } from '../../api/query.ts';
import { DateText } from '../../format/values.tsx';
import { Refusal } from '../../ui/Refusal.tsx';
import { Skeleton } from '../../ui/Skeleton.tsx';
import { StateMark } from '../../ui/StateMark.tsx';

export const documentSetQuery = (workOrderId: string) =>
  queryFor(documentSetOperations.workOrderDocuments, { workOrderId });

function Checked({ by, on }: { by: string | null; on: string | null }) {
  if (on === null) return <StateMark state="waiting" word="currency not checked" />;
  return (
    <span className="quantity">
      <StateMark state="passed" word="found current" /> <DateText date={on} /> <span className="soft">{by}</span>
    </span>
  );
}

/** All the papers this work goes by, each with who found it current and when. */
export function DocumentSet({ workOrderId }: { workOrderId: string }) {
  const { data, error } = useQuery(documentSetQuery(workOrderId));
  if (error) return <Refusal problem={error} />;
  if (!data) return <Skeleton />;
  const { manual, set } = data;
  return (
    <ul className="lines">
      <li>
        <span>
          <strong className="code">{manual.number}</strong> revision {manual.revision}
          <br />
          <span className="soft">{manual.title}</span>
        </span>
        <Checked by={manual.currencyCheckedBy} on={manual.currencyCheckedOn} />
      </li>
      {set.map((one) => (
        <li key={one.issueId}>
          <span>
            <strong className="code">{one.number}</strong> {one.issue} of <DateText date={one.issuedOn} />
            <br />
            <span className="soft">
              {documentKindTitles[one.kind]}, {one.title}
            </span>
          </span>
          <Checked by={one.currencyCheckedBy} on={one.currencyCheckedOn} />
        </li>
      ))}
    </ul>
  );
}
