import type { FieldBalanceData } from '@hubwright/contracts/field-balance/shapes';

type Typed = Pick<
  FieldBalanceData,
  'source' | 'radius' | 'mostPerPlace' | 'mostInAll' | 'unit' | 'scatter' | 'mostWind'
>;

/** Places and limits as they are typed: lists a line each. */
export type DataDraft = Readonly<Typed> & {
  readonly counting: FieldBalanceData['counting'] | null;
  readonly radiusUnit: FieldBalanceData['radiusUnit'];
  readonly mostPieces: string;
  readonly mostPlaces: string;
  readonly places: string;
  readonly ranges: string;
  readonly planeName: string;
  readonly second: PlaneDraft | null;
};

type PlaneKeys = 'planeName' | 'places' | 'radius' | 'mostPerPlace' | 'mostInAll' | 'mostPieces' | 'mostPlaces';
type PlaneDraft = Readonly<Record<PlaneKeys, string>>;
export const emptyPlane: PlaneDraft = {
  ...{ planeName: '', places: '', radius: '', mostPerPlace: '', mostInAll: '', mostPieces: '', mostPlaces: '' },
};

export const emptyData: DataDraft = {
  ...{ source: '', radius: '', mostPerPlace: '', mostInAll: '', unit: '', scatter: '', mostWind: '' },
  ...{ counting: null, radiusUnit: 'in', mostPieces: '', mostPlaces: '', places: '', ranges: '' },
  ...{ planeName: '', second: null },
};

const linesOf = (text: string) =>
  text
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => line !== '')
    .map((line) => line.split(/[\t,;]+/).map((part) => part.trim()));

const placesFrom = (text: string) => linesOf(text).map(([name = '', angle = '']) => ({ name, angle }));

/** What is sent; what is missing or cannot be read is left for the contract to refuse at its field. */
export function dataFrom(draft: DataDraft): FieldBalanceData {
  const { places, ranges, mostPieces, mostPlaces, counting, planeName, second, ...typed } = draft;
  return {
    ...typed,
    counting: counting as FieldBalanceData['counting'],
    ...{ mostPieces: Number(mostPieces), mostPlaces: Number(mostPlaces) },
    places: placesFrom(places),
    ...(second ? { planeName, secondPlane: planeFrom(second) } : {}),
    ranges: linesOf(ranges).map(([fromRpm, toRpm, limit = '', target = '']) => ({
      ...{ fromRpm: Number(fromRpm), toRpm: Number(toRpm), limit, target },
    })),
  };
}

function planeFrom({ places, mostPieces, mostPlaces, ...typed }: PlaneDraft) {
  return {
    ...{ ...typed, mostPieces: Number(mostPieces), mostPlaces: Number(mostPlaces) },
    places: placesFrom(places),
  };
}
