import { Decimal } from 'decimal.js';
import { RuleError } from '../errors/index.ts';

/** What a procedure asks of an eddy-current set-up; numbers as decimal text, bounds inclusive. */
export interface EddyCurrentSpec {
  readonly frequency: { readonly low: string; readonly high: string; readonly unit: string };
  /** The notch of the reference standard that the signal is set on. */
  readonly notchDepth: string;
  readonly unit: string;
  /** The signal the notch must give when set up, in percent of the screen’s height. */
  readonly signal: { readonly low: string; readonly high: string };
  /** How far the signal from the notch may have moved by the end of the scan, in percent of what it was. */
  readonly drift: string;
}

/** The set-up as it was used. */
export interface EddyCurrentSetup {
  readonly frequency: string;
  readonly notchDepth: string;
  readonly before: string;
  readonly after: string;
}

export interface EddyCurrentVerdict {
  readonly good: boolean;
  readonly reasons: string[];
  /** Percent of the signal before, either way; rounded up to two decimals, never in the part’s favour. */
  readonly driftPercent: string;
}

/**
 * Whether an eddy-current set-up was the one asked for and still was at the end of the scan. A signal that moved too far puts the
 * whole scan in doubt: it is done again. Computed in decimals, so that a signal at the very limit is within it.
 *
 * Source: that the notch is shown before and after and that a drift beyond the procedure’s means scanning again is common practice,
 * no source; the figures are data of the procedure. Errors: RuleError `bad-signal` for a signal before that is not above zero,
 * `not-a-number` for what is none.
 *
 * @example before 80, after 72, drift 10 → { good: true, driftPercent: '10' }
 */
export function judgeEddyCurrent(setup: EddyCurrentSetup, spec: EddyCurrentSpec): EddyCurrentVerdict {
  const [before, after] = [read(setup.before, 'before'), read(setup.after, 'after')];
  if (before.lte(0))
    throw new RuleError('bad-signal', 'The notch gave a signal above zero when it was set up.', 'before');
  const frequency = read(setup.frequency, 'frequency');
  const drift = after.minus(before).abs().div(before).times(100);
  const { low, high } = spec.signal;
  const reasons = [
    ...(frequency.lt(spec.frequency.low) || frequency.gt(spec.frequency.high)
      ? [
          `Frequency ${setup.frequency}; ${spec.frequency.low} to ${spec.frequency.high} ${spec.frequency.unit} is asked for.`,
        ]
      : []),
    ...(read(setup.notchDepth, 'notchDepth').eq(spec.notchDepth)
      ? []
      : [`Notch of ${setup.notchDepth} ${spec.unit}; one of ${spec.notchDepth} is asked for.`]),
    ...(before.lt(low) || before.gt(high)
      ? [`Signal ${setup.before} % when set up; ${low} to ${high} % is asked for.`]
      : []),
    ...(drift.gt(spec.drift)
      ? [`The signal moved by ${shown(drift)} %; ${spec.drift} % is allowed: scan it again.`]
      : []),
  ];
  return { good: reasons.length === 0, reasons, driftPercent: shown(drift) };
}

function shown(percent: Decimal): string {
  return percent.toDecimalPlaces(2, Decimal.ROUND_UP).toString();
}

function read(text: string, path: string): Decimal {
  if (!/^-?\d{1,12}(\.\d{1,8})?$/.test(text)) throw new RuleError('not-a-number', 'This is no decimal number.', path);
  return new Decimal(text);
}

/** A set-up as it stands beside its signature. */
export function sayEddyCurrent(
  setup: EddyCurrentSetup & { readonly probe: string; readonly gain: string; readonly standardSerial: string },
  { frequency, unit }: EddyCurrentSpec,
  { driftPercent }: Pick<EddyCurrentVerdict, 'driftPercent'>,
) {
  return [
    { name: 'probe', value: setup.probe },
    { name: 'frequency', value: `${setup.frequency} ${frequency.unit}` },
    { name: 'gain', value: `${setup.gain} dB` },
    { name: 'reference standard', value: `${setup.standardSerial}, notch ${setup.notchDepth} ${unit}` },
    {
      name: 'signal from the notch',
      value: `${setup.before} % before, ${setup.after} % after, moved by ${driftPercent} %`,
    },
  ];
}
