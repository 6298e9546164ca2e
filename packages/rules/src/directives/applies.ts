import type { Directive, DirectiveItem, DirectiveLine, DirectiveUnit } from './directive.ts';
import { serialPlace } from './serial-place.ts';

/** One item a directive concerns, or may concern: then `look` says why nobody can tell from the record. */
export interface Concerned {
  readonly item: DirectiveItem;
  readonly look: string | null;
}

/** The items of the unit that the directive concerns, each once; a line that surely concerns one outweighs a doubtful one. */
export function concernedBy({ lines }: Directive, of: DirectiveUnit): Concerned[] {
  const found = new Map<string, Concerned>();
  for (const one of lines.flatMap((line) => byLine(line, of))) {
    const before = found.get(one.item.itemId);
    if (!before || before.look !== null) found.set(one.item.itemId, one);
  }
  return [...found.values()];
}

function byLine(line: DirectiveLine, of: DirectiveUnit): Concerned[] {
  if (line.modelId !== null && line.modelId !== of.modelId) return [];
  if (line.partNumber === null) return bySerial(line, of.unit);
  const number = plain(line.partNumber);
  const fitted = [of.unit, ...of.parts].filter(({ partNumber }) => plain(partNumber) === number);
  if (fitted.length === 0 && of.silentOn.some((one) => plain(one) === number))
    return [{ item: of.unit, look: `whether ${line.partNumber} is fitted is not on record` }];
  return fitted.flatMap((item) => bySerial(line, item));
}

function bySerial({ serialFrom, serialTo }: DirectiveLine, item: DirectiveItem): Concerned[] {
  const place = serialPlace(item.serial, {
    ...(serialFrom === null ? {} : { from: serialFrom }),
    ...(serialTo === null ? {} : { to: serialTo }),
  });
  if (place === 'out') return [];
  if (place === 'in') return [{ item, look: null }];
  const range = serialTo === null ? `${serialFrom} and on` : `${serialFrom ?? 'up'} to ${serialTo}`;
  const why =
    item.serial === null ? 'its serial is not read' : `serial ${item.serial} cannot be compared with the range`;
  return [{ item, look: `${why} (${range})` }];
}

function plain(partNumber: string): string {
  return partNumber.trim().toUpperCase();
}
