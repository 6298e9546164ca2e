import { RuleError } from '../errors/index.ts';
import { acceptance, type GuardBandMethod } from '../measurement/index.ts';

/** The ways a blade is moved by hand to feel what its retention leaves free; common practice, no source. */
export type PlayDirection = 'fore-and-aft' | 'edgewise' | 'in-and-out' | 'rotation';

interface Band {
  readonly low?: string | undefined;
  readonly high?: string | undefined;
}
/** Bounds inclusive, as decimal text in the unit of the manual. */
interface BandAsked extends Band {
  readonly unit: string;
}

/** What a revision asks of a function test; what it leaves out is not tested. */
export interface FunctionTestAsked {
  readonly blades: number;
  readonly leak?:
    | {
        /** Any of these, and nothing else. */
        readonly media: readonly string[];
        /** How often the pitch is run from stop to stop under pressure before the loss is read. */
        readonly cycles: number;
        readonly pressure: BandAsked;
        /** At least so long under pressure. */
        readonly minutes: string;
        /** At most so much lost in that time, in the unit of the pressure. */
        readonly lost: string;
      }
    | undefined;
  /** Of every blade, each way: at most so much. */
  readonly play?:
    | readonly { readonly direction: PlayDirection; readonly most: string; readonly unit: string }[]
    | undefined;
  /** What it takes to turn each blade. */
  readonly friction?: BandAsked | undefined;
  /** Seconds from stop to stop. */
  readonly travel?: { readonly up: Band; readonly down: Band } | undefined;
}

/** One value of the test with its limits. */
export interface ValueAsked extends BandAsked {
  /** Where it stands in the entry. */
  readonly path: string;
  readonly name: string;
}

/** Every number the test asks for, in the order it is made: the leak, then blade by blade, then the way up and down. */
export function valuesAsked({ blades, leak, play = [], friction, travel }: FunctionTestAsked): ValueAsked[] {
  const each = Array.from({ length: blades }, (_, index) => index + 1);
  return [
    ...(leak
      ? [
          { path: 'leak/pressure', name: 'test pressure', ...leak.pressure },
          { path: 'leak/minutes', name: 'held for', low: leak.minutes, unit: 'min' },
          { path: 'leak/lost', name: 'pressure lost', high: leak.lost, unit: leak.pressure.unit },
        ]
      : []),
    ...play.flatMap(({ direction, most, unit }) =>
      each.map((blade) => ({
        ...{ path: `play/${blade}/${direction}`, name: `blade ${blade} play ${direction}`, high: most, unit },
      })),
    ),
    ...(friction
      ? each.map((blade) => ({ path: `friction/${blade}`, name: `blade ${blade} friction`, ...friction }))
      : []),
    ...(travel
      ? [
          { path: 'travel/up', name: 'travel up', ...travel.up, unit: 's' },
          { path: 'travel/down', name: 'travel down', ...travel.down, unit: 's' },
        ]
      : []),
  ];
}

/**
 * A value with its limits stepped inward by the doubt of the instrument, as {@link acceptance} does it; a doubt of another quantity says
 * nothing of it. Errors: RuleError `uncertainty-too-large`.
 */
export function acceptedValue(
  value: ValueAsked,
  doubt: { readonly uncertainty: string; readonly unit: string } | null,
  method: GuardBandMethod,
): ValueAsked {
  if (method === 'none' || doubt === null) return value;
  const { low = null, high = null, unit } = value;
  const decimals = Math.max(...[low, high].map((text) => text?.split('.')[1]?.length ?? 0));
  const band = acceptance({ low, high, unit, decimals }, doubt, method);
  return {
    ...value,
    ...(band.low === null ? {} : { low: band.low }),
    ...(band.high === null ? {} : { high: band.high }),
  };
}

export function limitsInWords({ low, high, unit }: BandAsked): string {
  if (low !== undefined && high !== undefined) return `${low} to ${high} ${unit}`;
  if (low !== undefined) return `at least ${low} ${unit}`;
  if (high === undefined) throw new RuleError('limit-missing', 'A value of a test has a limit.', 'limit');
  return `at most ${high} ${unit}`;
}
