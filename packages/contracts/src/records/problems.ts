import type { ProblemKind } from '../problems.ts';

export const recordProblems = {
  'no-backup-place': {
    status: 409,
    title: 'This server writes no backups by itself',
    next: 'Set HUBWRIGHT_BACKUP_HOURS and a folder, or run npm run backup.',
  },
  'still-needed': {
    status: 409,
    title: 'What is kept about this person is still needed',
    next: 'End their account first; records they signed are kept for their time and purged then.',
  },
  'shop-key-missing': {
    status: 409,
    title: 'The key that would sign the new one is not on this server',
    next: 'Restore the keys folder from an encrypted backup; without it the next anchor makes a new key by itself.',
  },
} as const satisfies Record<string, ProblemKind>;
