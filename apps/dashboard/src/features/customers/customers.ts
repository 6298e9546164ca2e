import { customerOperations } from '@hubwright/contracts/customers/operations';
import type { Reply } from '@hubwright/contracts/operation';
import { queryFor } from '../../api/query.ts';

export const customerQuery = (customerId: string) => queryFor(customerOperations.showCustomer, { customerId });
export type CustomerRow = Reply<typeof customerOperations.listCustomers>['rows'][number];
export type Customer = Reply<typeof customerOperations.showCustomer>;
export type Aircraft = Customer['aircraft'][number];
