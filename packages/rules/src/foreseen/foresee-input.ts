import type { ListLine } from '../kit-list/index.ts';
import type { Ahead, DueRange } from './arrival-shares.ts';

/** `due`: what the kit of a unit always asks for. `finding`: what is needed only where it is found to be. */
export type ForeseenKind = 'due' | 'finding';

/** A unit out there that comes due. `sources` names what its customer takes; it is only carried along. */
export interface UnitDue extends DueRange {
  readonly unit: string;
  readonly model: string;
  readonly serial: string | null;
  readonly sources: string;
}

/** A unit in the house that nobody has looked into yet. */
export interface UnitUnseen {
  readonly workOrder: string;
  readonly model: string;
  readonly sources: string;
  readonly needBy: string;
  /** How likely its work is to be approved. */
  readonly odds: number;
  /** Parts that a finding has asked for already: they stand in its kit. */
  readonly asked: readonly string[];
}

export interface ForeseenModel {
  readonly model: string;
  readonly scope: string;
  readonly bladeCount: number;
  readonly list: readonly ListLine[];
}

export interface ForeseeInput extends Ahead {
  /** Days from a unit's arrival to the build that needs its kit. */
  readonly buildDays: number;
  /** How likely a unit that comes due comes to us. */
  readonly returnRate: number;
  readonly due: readonly UnitDue[];
  readonly unseen: readonly UnitUnseen[];
  readonly models: readonly ForeseenModel[];
  /** How often a unit of the model asks for the part beyond its list, and how many at a time. */
  readonly rates: readonly {
    readonly model: string;
    readonly part: string;
    readonly rate: number;
    readonly each: number;
  }[];
}
