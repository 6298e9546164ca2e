import type { FieldBalanceData } from './shapes.ts';

/** One plane of places with its limits; it has a name where the model has two. */
export type FieldPlane = Pick<
  FieldBalanceData,
  'places' | 'radius' | 'mostPerPlace' | 'mostInAll' | 'mostPieces' | 'mostPlaces'
> & { readonly planeName: string | null };

/** The planes a document has, one or two. */
export function planesOf(data: FieldBalanceData): FieldPlane[] {
  const { secondPlane, planeName, ...first } = data;
  return [{ ...first, planeName: planeName ?? null }, ...(secondPlane ? [secondPlane] : [])];
}

/** The planes that are balanced: with one sensor only the first, since two planes do not tell themselves apart there. */
export function planesInUse(
  data: FieldBalanceData,
  sheet: { readonly secondSensor?: object | undefined },
): FieldPlane[] {
  return planesOf(data).slice(0, sheet.secondSensor ? 2 : 1);
}

/** Every place of every plane, with the name of its plane. */
export function placesOf(planes: readonly FieldPlane[]) {
  return planes.flatMap(({ planeName, places }, plane) => places.map((place) => ({ ...place, planeName, plane })));
}
