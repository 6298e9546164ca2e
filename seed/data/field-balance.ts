import type { fieldBalanceOperations } from '@hubwright/contracts/field-balance/operations';
import type { Sent } from '@hubwright/contracts/operation';

type Data = Omit<Sent<typeof fieldBalanceOperations.enterFieldBalanceData>, 'modelId' | 'signature'>;
type Sheet = Omit<Sent<typeof fieldBalanceOperations.signFieldSetUp>, 'fieldBalanceId' | 'signature' | 'instrumentId'>;

/** Holes of the spinner bulkhead, counted clockwise from blade 1. */
const holes = (count: number, letter = 'H') =>
  Array.from({ length: count }, (_, i) => ({ name: `${letter}${i + 1}`, angle: String((360 * i) / count) }));

/** Invented, as everything of these propellers: demonstration data, not for use on aircraft. */
const data = (source: string, count: number, changes: Partial<Data> = {}): Data => ({
  source: `${source}. Demonstration data, not for use on aircraft`,
  counting: 'clockwise',
  places: holes(count),
  radius: '6.25',
  radiusUnit: 'in',
  mostPerPlace: '30',
  mostInAll: '90',
  mostPieces: 6,
  mostPlaces: 6,
  unit: 'ips',
  ranges: [{ fromRpm: 1_800, toRpm: 2_700, limit: '0.20', target: '0.07' }],
  scatter: '0.01',
  mostWind: '10',
  ...changes,
});

export const balanceData: Readonly<Record<string, Data>> = {
  'Q3C-76': data('QOM-301 revision 7, chapter 61-20', 12),
  'Q2C-72': data('QOM-201 revision 2, chapter 61-20', 8, { mostPlaces: 4, mostInAll: '60' }),
  'Q4F-84': data('QOM-401 revision 3, chapter 61-20', 16, {
    ranges: [{ fromRpm: 1_200, toRpm: 1_900, limit: '0.15', target: '0.07' }],
    mostInAll: '120',
    planeName: 'Spinner bulkhead, front',
    secondPlane: {
      ...{ planeName: 'Spinner bulkhead, rear', places: holes(16, 'R'), radius: '7.5' },
      ...{ mostPerPlace: '30', mostInAll: '120', mostPieces: 6, mostPlaces: 6 },
    },
  }),
};

/** A model with a second plane at the starter ring: what a document may say beside the holes of the bulkhead. */
export const starterRing = {
  planeName: 'Spinner bulkhead',
  secondPlane: {
    ...{ planeName: 'Starter ring', places: holes(10, 'S'), radius: '7.9' },
    ...{ mostPerPlace: '25', mostInAll: '60', mostPieces: 4, mostPlaces: 4 },
  },
};

/** Grams of one piece. */
export const balanceHardware: Readonly<Record<string, string>> = {
  'Q-DW-B1': '6.2',
  'Q-DW-B2': '8.4',
  'Q-DW-W1': '2.1',
  'Q-DW-W2': '0.9',
};

export const sheet: Sheet = {
  procedure: 'Off-station procedure OSP-4, issue 2',
  wind: '6',
  weather: 'Light wind from the left, dry, gusts below 8 kt',
  tiedDown: true,
  areaClear: true,
  cowlingClosed: true,
  brakesSet: true,
  observerPosted: true,
  sensorPlace: 'Engine case, behind the propeller flange, top',
  sensorAxis: 'vertical',
  phaseReference: 'Reflecting tape on the back of blade 1',
  counting: 'clockwise',
  found: [],
};

export interface FieldRotor {
  /** Grams and degrees of what is out of balance. */
  readonly unbalance: readonly [mass: number, angle: number];
  /** At each speed what one gram causes, and where. */
  readonly speeds: readonly { readonly rpm: number; readonly influence: number; readonly phase: number }[];
}

/** A rotor that answers in proportion, read to two decimals and whole degrees. */
export function readingsWith(rotor: FieldRotor, weights: readonly (readonly [mass: number, angle: number])[]) {
  const vectors = [rotor.unbalance, ...weights].map(([mass, degrees]) => [
    mass * Math.cos((degrees * Math.PI) / 180),
    mass * Math.sin((degrees * Math.PI) / 180),
  ]);
  const x = vectors.reduce((sum, [part = 0]) => sum + part, 0);
  const y = vectors.reduce((sum, [, part = 0]) => sum + part, 0);
  const angle = (Math.atan2(y, x) * 180) / Math.PI;
  return rotor.speeds.map(({ rpm, influence, phase }) => ({
    rpm,
    amplitude: (influence * Math.hypot(x, y)).toFixed(2),
    phase: String(((Math.round(angle + phase) % 360) + 360) % 360),
  }));
}

export const secondSensor = { sensorPlace: 'Engine case, rear, right', sensorAxis: 'horizontal' } as const;

type Part = readonly [influence: number, phase: number];
interface TwoPlaneRotor {
  /** Grams and degrees of what is out of balance in each plane. */
  readonly unbalance: readonly [readonly [number, number], readonly [number, number]];
  /** At each speed what one gram in each plane causes at each sensor. */
  readonly speeds: readonly { readonly rpm: number; readonly sensors: readonly [Sensor, Sensor] }[];
}
type Sensor = readonly [Part, Part];

/** A rotor of two planes read by two sensors, to two decimals and whole degrees. */
export function readingsInPlanes(
  rotor: TwoPlaneRotor,
  weights: readonly (readonly [plane: 0 | 1, mass: number, angle: number])[],
) {
  const all = [...rotor.unbalance.map(([mass, angle], plane) => [plane, mass, angle] as const), ...weights];
  const read = (sensor: Sensor) => {
    const parts = all.map(([plane, mass, angle]) => {
      const [influence, phase] = sensor[plane === 0 ? 0 : 1];
      const turned = ((angle + phase) * Math.PI) / 180;
      return [influence * mass * Math.cos(turned), influence * mass * Math.sin(turned)] as const;
    });
    const x = parts.reduce((sum, [part]) => sum + part, 0);
    const y = parts.reduce((sum, [, part]) => sum + part, 0);
    const phase = Math.round((Math.atan2(y, x) * 180) / Math.PI);
    return { amplitude: Math.hypot(x, y).toFixed(2), phase: String((phase + 360) % 360) };
  };
  return rotor.speeds.map(({ rpm, sensors: [first, second] }) => ({ rpm, ...read(first), second: read(second) }));
}

export const courserInPlanes: TwoPlaneRotor = {
  unbalance: [
    [22, 200],
    [15, 310],
  ],
  speeds: [
    {
      rpm: 2_300,
      sensors: [
        [
          [0.019, 58],
          [0.006, 120],
        ],
        [
          [0.005, 250],
          [0.016, 20],
        ],
      ],
    },
    {
      rpm: 2_500,
      sensors: [
        [
          [0.022, 66],
          [0.007, 131],
        ],
        [
          [0.006, 262],
          [0.018, 28],
        ],
      ],
    },
  ],
};

export const courserRotor: FieldRotor = {
  unbalance: [24, 214],
  speeds: [
    { rpm: 2_300, influence: 0.019, phase: 58 },
    { rpm: 2_500, influence: 0.022, phase: 66 },
  ],
};

export const pinnaceRotor: FieldRotor = {
  unbalance: [19, 98],
  speeds: [{ rpm: 2_400, influence: 0.024, phase: 71 }],
};
