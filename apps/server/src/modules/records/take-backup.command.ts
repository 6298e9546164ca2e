import { Problem } from '@hubwright/contracts/problems';
import { recordOperations } from '@hubwright/contracts/records/operations';
import type { Backups } from '../../platform/backup/backups.ts';
import { defineCommand } from '../../platform/command/command.ts';
import { shopSubjectId } from '../people/public.ts';

/** Records who asked; the backup itself is written beside, and holds this entry or not. */
export const takeBackup = (backups: Backups) =>
  defineCommand(recordOperations.takeBackup, {
    locks: () => [],
    async execute() {
      if (backups.everyHours === undefined)
        throw new Problem('no-backup-place', 'This server was started without a place for backups');
      return { reply: { ok: true as const }, subjects: [{ kind: 'shop', id: shopSubjectId }] };
    },
  });
