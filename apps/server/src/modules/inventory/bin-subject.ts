import { v5 } from 'uuid';

const binNamespace = 'b1a0c0de-0000-5000-8000-000000000001';

/** Bins are named by their code; record chains are named by uuid. This is the code's own, the same every time. */
export function binSubject(code: string) {
  return { kind: 'bin', id: v5(code, binNamespace) } as const;
}
