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
};

export const emptyData: DataDraft = {
  ...{ source: '', radius: '', mostPerPlace: '', mostInAll: '', unit: '', scatter: '', mostWind: '' },
  ...{ counting: null, radiusUnit: 'in', mostPieces: '', mostPlaces: '', places: '', ranges: '' },
};

const linesOf = (text: string) =>
  text
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => line !== '')
    .map((line) => line.split(/[\t,;]+/).map((part) => part.trim()));

/** What is sent; what is missing or cannot be read is left for the contract to refuse at its field. */
export function dataFrom({ places, ranges, mostPieces, mostPlaces, counting, ...typed }: DataDraft): FieldBalanceData {
  return {
    ...typed,
    counting: counting as FieldBalanceData['counting'],
    ...{ mostPieces: Number(mostPieces), mostPlaces: Number(mostPlaces) },
    places: linesOf(places).map(([name = '', angle = '']) => ({ name, angle })),
    ranges: linesOf(ranges).map(([fromRpm, toRpm, limit = '', target = '']) => ({
      ...{ fromRpm: Number(fromRpm), toRpm: Number(toRpm), limit, target },
    })),
  };
}
