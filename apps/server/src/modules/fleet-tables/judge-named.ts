import { Twice } from '../imports/public.ts';
import type { FleetCells } from './fleet-cells.ts';
import type { FleetFacts, ModelOnRecord } from './fleet-facts.ts';
import type { NamedAircraft, NamedUnit } from './shapes.ts';

/** What earlier rows of the same table said. */
export class EarlierRows {
  readonly units = new Twice();
  readonly places = new Twice();
  private readonly types = new Map<string, { line: number; airframe: string; engine: string }>();

  /** What the first row of an aircraft says of its type, completed by this one. */
  typeOf({ registration, airframe, engine }: FleetCells, line: number) {
    const before = this.types.get(registration);
    const type = {
      line: before?.line ?? line,
      airframe: before?.airframe || airframe,
      engine: before?.engine || engine,
    };
    this.types.set(registration, type);
    return type;
  }
}

/** The aircraft of a row; without one a fault says why. */
export function namedAircraft(
  row: FleetCells,
  facts: FleetFacts,
  { line, earlier }: AtLine,
): NamedAircraft | undefined {
  const { cells, registration } = row;
  if (registration === '') return undefined;
  const known = facts.aircraft.get(registration);
  if (known && known.customerId !== facts.customerId)
    return cells.wrong(
      'registration',
      `${registration} is on record as an aircraft of ${known.customer}: take the row out, or ask both whose it is`,
    );
  const said = earlier.typeOf(row, line);
  for (const field of ['airframe', 'engine'] as const) {
    if (row[field] !== '' && row[field] !== said[field])
      cells.wrong(field, `Line ${said.line} says “${said[field]}” of the same aircraft: they must agree`);
    if (!known && said[field] === '') cells.wrong(field, `${registration} is new here: say its ${field}`);
  }
  return {
    ...{ id: known?.id, registration },
    airframe: said.airframe || (known?.airframe ?? ''),
    engine: said.engine || (known?.engine ?? ''),
  };
}

interface AtLine {
  readonly line: number;
  readonly earlier: EarlierRows;
}

/** The unit of a row, with what kind of unit it is; without one a fault says why. */
export function namedUnit(row: FleetCells, facts: FleetFacts, { line, earlier }: AtLine) {
  const { cells, serial, registration, position } = row;
  const model = modelOf(row, facts);
  if (!model || serial === undefined) return undefined;
  const { id: modelId, maker, designation, kind } = model;
  const key = `${maker}|${designation}|${serial}`;
  const first = earlier.units.firstLineOf(key, line);
  if (first !== undefined) cells.wrong('serial', `Line ${first} names the same unit: take one of the two out`);
  const there = earlier.places.firstLineOf(`${registration}|${position}|${kind}`, line);
  if (there !== undefined && first === undefined)
    cells.wrong('position', `Line ${there} has a ${kind} at the same position: correct one of the two`);
  const unit: NamedUnit = { id: facts.items.get(key), modelId, maker, designation, serial };
  return { unit, kind };
}

const bare = (text: string) => text.toUpperCase().replace(/[^A-Z0-9]/g, '');

function modelOf({ cells, model, maker }: FleetCells, { models }: FleetFacts): ModelOnRecord | undefined {
  if (model === '') return undefined;
  const same = models.filter(({ designation }) => designation.toUpperCase() === model.toUpperCase());
  const own = maker === '' ? same : same.filter((one) => one.maker.toUpperCase() === maker.toUpperCase());
  if (own.length === 1) return own[0];
  const makers = [...new Set(same.map((one) => one.maker))].join(', ');
  if (own.length > 1) return cells.wrong('maker', `Several makers have a ${model} (${makers}): say whose it is`);
  if (same.length > 0) return cells.wrong('maker', `The ${model} on record is of ${makers}, not of ${maker}`);
  const near = models.find(({ designation }) => bare(designation) === bare(model));
  return cells.wrong(
    'model',
    near
      ? `There is no model ${model} on record: did you mean ${near.designation} of ${near.maker}?`
      : `There is no model ${model} on record: correct it, or have the model added among the manuals first`,
  );
}
