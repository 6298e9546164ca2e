import { RuleError } from '../errors/index.ts';
import { explodeKitList, type ListLine } from '../kit-list/index.ts';
import type { ForeseeInput, ForeseenModel } from './foresee-input.ts';

export interface Need {
  /** How likely a unit that is looked into asks for it, and how many then. */
  readonly rate: number;
  readonly each: number;
}
export interface Asks {
  readonly listed: ReadonlyMap<string, number>;
  readonly found: ReadonlyMap<string, Need>;
}

/** What a unit's list and what is found ask for; worked out once for each model, and for each serial only where the list tells them apart. */
export function asksOf({
  models,
  rates,
  returnRate,
}: ForeseeInput): (unit: { model: string; serial: string | null }) => Asks {
  if (!(returnRate >= 0 && returnRate <= 1))
    throw new RuleError('not-a-share', 'How likely a unit comes lies between 0 and 1.', 'returnRate');
  const found = new Map<string, Map<string, Need>>();
  for (const { model, part, rate, each } of rates) {
    const known = found.get(model) ?? new Map<string, Need>();
    found.set(model, known.set(part, { rate, each }));
  }
  const lists = new Map(models.map((model) => [model.model, model]));
  const known = new Map<string, Asks>();
  return ({ model, serial }) => {
    const list = lists.get(model);
    const key = list?.list.some(isRanged) ? `${model} ${serial ?? ''}` : model;
    const before = known.get(key);
    if (before) return before;
    const asks = { listed: list ? mandatory(list, serial) : new Map(), found: found.get(model) ?? new Map() };
    known.set(key, asks);
    return asks;
  };
}

const isRanged = ({ serialFrom, serialTo }: ListLine) => serialFrom !== undefined || serialTo !== undefined;

function mandatory({ list, scope, bladeCount }: ForeseenModel, serial: string | null): Map<string, number> {
  const needed = new Map<string, number>();
  for (const { partId, quantity, source } of explodeKitList(list, { scope, serial, bladeCount }).lines)
    if (source === 'new') needed.set(partId, (needed.get(partId) ?? 0) + quantity);
  return needed;
}
