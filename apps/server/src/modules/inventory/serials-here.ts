type Ask = <Row extends object>(text: string, parameters: readonly unknown[]) => Promise<Row[]>;

const serialsSql = `
  SELECT l.code, l.part_id AS "partId", l.serial FROM lots l WHERE l.serial = ANY($1::text[])
    AND EXISTS (SELECT FROM balances b WHERE b.lot_id = l.id AND b.on_hand > 0 AND b.place_kind <> 'scrap')`;

/** Which of these serials are on a piece that is here, whatever the part: lot codes by `part serial`. */
export async function serialsHere(ask: Ask, serials: readonly string[]): Promise<ReadonlyMap<string, string>> {
  const lots = await ask<{ code: string; partId: string; serial: string }>(serialsSql, [[...new Set(serials)]]);
  return new Map(lots.map(({ code, partId, serial }) => [`${partId} ${serial}`, code]));
}
