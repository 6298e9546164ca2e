import type { ProblemKind } from '../problems.ts';

/** Why a bake is not begun or withdrawn. */
export const bakeProblems = {
  'not-a-bake': {
    status: 409,
    title: 'This step is no bake',
    next: 'Open the bake of this part; other work has no oven clock.',
  },
  'bake-begun': {
    status: 409,
    title: 'This bake is in the oven already',
    next: 'If that was entered in error, withdraw it with the reason, then begin it again.',
  },
  'bake-not-begun': {
    status: 409,
    title: 'This bake is not in the oven',
    next: 'Reload: somebody may have withdrawn it.',
  },
} as const satisfies Record<string, ProblemKind>;
