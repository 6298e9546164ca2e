import type { Operation } from '@hubwright/contracts/operation';
import type { Role } from '@hubwright/contracts/roles';

/** Whether someone with these roles may call the operation. Hides what would be refused; the server is the judge. */
export function mayCall(op: Operation, roles: readonly Role[]): boolean {
  if (op.access === 'public' || op.access === 'signed-in') return true;
  return op.access.some((role) => roles.includes(role));
}
