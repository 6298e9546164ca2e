import { gaugeScale } from './gauge-scale.ts';

export interface LimitGaugeProps {
  /** Decimal text as entered; null while there is nothing. */
  value: string | null;
  low: string | null;
  high: string | null;
  unit: string;
}

const words = { none: 'not measured', inside: 'inside the limit', below: 'below the limit', above: 'above the limit' };

function limitWords(low: string | null, high: string | null, unit: string): string {
  if (low !== null && high !== null) return `limit ${low} to ${high} ${unit}`;
  if (low !== null) return `at least ${low} ${unit}`;
  return high === null ? 'no limit' : `at most ${high} ${unit}`;
}

/** Small, beside the entry: where the value lies against its limits. Inside a dot on the band, outside a cross past its end. */
export function LimitGauge({ value, low, high, unit }: LimitGaugeProps) {
  const scale = gaugeScale(value, low, high);
  const at = (share: number | null, otherwise: number) => 6 + (share ?? otherwise) * 108;
  const x = at(scale.value, 0);
  return (
    <span className="limit-gauge">
      <svg className="picture" viewBox="0 0 120 20" aria-hidden="true">
        <line className="axis" x1="4" x2="116" y1="10" y2="10" />
        <rect className="band" x={at(scale.low, 0)} width={at(scale.high, 1) - at(scale.low, 0)} y="6" height="8" />
        {scale.low === null ? null : (
          <line className="limit" x1={at(scale.low, 0)} x2={at(scale.low, 0)} y1="2" y2="18" />
        )}
        {scale.high === null ? null : (
          <line className="limit" x1={at(scale.high, 1)} x2={at(scale.high, 1)} y1="2" y2="18" />
        )}
        {scale.standing === 'inside' ? <circle className="inside" cx={x} cy="10" r="5" /> : null}
        {scale.standing === 'below' || scale.standing === 'above' ? (
          <path className="outside" d={`M${x - 4} 6l8 8m0 -8l-8 8`} />
        ) : null}
      </svg>
      <span className="only-heard">{`${words[scale.standing]}, ${limitWords(low, high, unit)}`}</span>
    </span>
  );
}
