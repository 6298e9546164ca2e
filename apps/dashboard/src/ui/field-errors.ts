import type { Pointed } from '@hubwright/contracts/problems';

/** `/shop/name` (RFC 6901 pointer) → `shop/name`, the name fields carry. */
export function fieldName(pointer: string): string {
  return pointer.replace(/^\//, '').replaceAll('~1', '/').replaceAll('~0', '~');
}

/**
 * The server's pointers as messages per field name. An error inside a list or group also lands on the group
 * (`/roles/0` on `roles`), unless the group has an error of its own.
 */
export function fieldErrors(errors: readonly Pointed[]): Record<string, string> {
  const found: Record<string, string> = {};
  for (const { pointer, detail } of errors) {
    const name = fieldName(pointer);
    found[name] = detail;
    const steps = name.split('/');
    for (let length = steps.length - 1; length > 0; length -= 1) {
      const group = steps.slice(0, length).join('/');
      found[group] ??= detail;
    }
  }
  return found;
}
