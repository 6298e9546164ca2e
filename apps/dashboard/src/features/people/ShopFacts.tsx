import { countOf } from '../../format/numbers.ts';
import { processWords } from '../../format/process-words.ts';
import { Amount } from '../../format/values.tsx';
import type { Shop } from './change-shop.tsx';

/** The profile to read, for those who may not change it. */
export function ShopFacts({ shop }: { shop: Shop }) {
  const facts: readonly [string, React.ReactNode][] = [
    ['Name of the shop', shop.name],
    [
      'Certificate number',
      <span key="c" className="code">
        {shop.certificateNumber}
      </span>,
    ],
    ['Authority', shop.authority],
    ['Ratings', shop.ratings.join(', ')],
    ['Approval statement', shop.recordStatements.approval],
    ['Caution line', shop.recordStatements.caution],
    ['A release names the approver’s own certificate', shop.namesPersonCertificate ? 'yes' : 'no'],
    ['Time zone', shop.zone],
    ['Measures', shop.units === 'inch' ? 'inches' : 'millimetres'],
    ['Labour rate an hour', <Amount key="l" minor={shop.labourRateMinor} currency={shop.currency} />],
    ['Evaluation fee', <Amount key="e" minor={shop.evaluationFeeMinor} currency={shop.currency} />],
    ['Tax', `${shop.taxPercent} %, rounded ${shop.taxRounding === 'line' ? 'on each line' : 'on the total'}`],
    ['A quote is valid for', countOf(shop.quoteValidDays, 'day')],
    [
      'The same person may do and inspect',
      shop.inspectOwnWork.map((each) => processWords[each]).join(', ') || 'nothing',
    ],
  ];
  return (
    <dl className="facts">
      {facts.map(([name, value]) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>{value}</dd>
        </div>
      ))}
    </dl>
  );
}
