import { DateText } from '../../format/values.tsx';

export interface LabelFacts {
  readonly code: string;
  readonly partNumber: string;
  readonly description: string;
  readonly quantity: number;
  readonly issueUnit: string;
  readonly supplierLot: string;
  readonly certificate: string;
  readonly expiresOn: string | null;
}

/** What belongs on the label of a lot. The code is what a scanner reads back. */
export function LotLabel({ label }: { label: LabelFacts }) {
  return (
    <section className="signed-content stack tight" aria-label={`Label of ${label.code}`}>
      <p className="small soft">On the label</p>
      <p className="figure code">{label.code}</p>
      <p>
        <span className="code">{label.partNumber}</span> {label.description}
      </p>
      <p>
        {label.quantity} {label.issueUnit} · supplier’s lot {label.supplierLot || 'not given'} · certificate{' '}
        {label.certificate || 'none'}
      </p>
      {label.expiresOn ? (
        <p>
          Do not use from <DateText date={label.expiresOn} /> on
        </p>
      ) : null}
    </section>
  );
}
