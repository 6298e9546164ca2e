import { type ExpectedDemand, percentText } from './expected-demand.ts';

function Range({ rate }: { rate: ExpectedDemand['returning'] }) {
  return (
    <>
      {percentText(rate.mean)}{' '}
      <span className="small soft">
        (between {percentText(rate.low)} and {percentText(rate.high)}, 95 % sure)
      </span>
    </>
  );
}

/** What the odds are told from. */
export function ExpectedRates({ of }: { of: ExpectedDemand }) {
  return (
    <dl className="facts">
      <div>
        <dt>A unit that comes due comes here</dt>
        <dd>
          <Range rate={of.returning} />
          <p className="small soft">{of.returning.sentence}</p>
        </dd>
      </div>
      {of.findings.map((rate) => (
        <div key={rate.model}>
          <dt>Found to be needed in a {rate.model}</dt>
          <dd>
            <Range rate={rate} />
            <p className="small soft">{rate.sentence}</p>
          </dd>
        </div>
      ))}
    </dl>
  );
}
