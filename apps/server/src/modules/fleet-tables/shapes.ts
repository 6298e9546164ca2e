import type { Meter } from '@hubwright/contracts/customers/operations';
import type { Reads } from '../../platform/database/reads.ts';
import type { Table } from '../imports/public.ts';

export type Mapping = Table['mapping'];

/** What a customer's table is planned from, in a preview and inside the transaction that applies it. */
export type FleetModels = Pick<
  Reads['models'],
  | 'aircraft'
  | 'aircraftInterval'
  | 'aircraftReading'
  | 'installation'
  | 'meterChange'
  | 'serializedItem'
  | 'shopProfile'
  | 'timeRecord'
  | 'unitModel'
  | 'workOrder'
>;

/** Whose table, and the table. */
export interface CustomersTable extends Table {
  readonly customerId: string;
}

/** An aircraft a table names: on record, or added by it. */
export interface NamedAircraft {
  readonly id: string | undefined;
  readonly registration: string;
  readonly airframe: string;
  readonly engine: string;
}

/** A unit a table names: on record, or added by it. */
export interface NamedUnit {
  readonly id: string | undefined;
  readonly modelId: string;
  readonly maker: string;
  readonly designation: string;
  readonly serial: string;
}

/** An installation as it stands. */
export interface StandingInterval {
  readonly id: string;
  readonly intervalId: string;
  readonly itemId: string;
  readonly item: string;
  readonly kind: string;
  readonly aircraftId: string;
  readonly registration: string;
  readonly position: string;
  readonly meter: Meter;
  readonly from: string;
  readonly fromTenths: number | null;
  readonly to: string | null;
}

/** Times as declared in a table before, or an overhaul on record. */
export interface PaperOnRecord {
  readonly id: string;
  readonly itemId: string;
  readonly basis: string;
  readonly on: string;
  readonly sinceNewTenths: number | null;
  readonly sinceOverhaulTenths: number | null;
  /** Set where a table said it. */
  readonly intervalId: string | null;
}
