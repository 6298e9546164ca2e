import { fileOperations } from '@hubwright/contracts/files/operations';
import { z } from 'zod';
import { defineCommand } from '../command/command.ts';
import type { FinishedUpload } from './finish-file.ts';
import type { FileStore } from './store.ts';

const hour = 60 * 60 * 1000;
/** How long a file waits for a record to name it. */
export const stagedFor = 24 * hour;

/** What was sent takes the place of input that a person writes: the same key with other bytes is another request. */
const stagedInput = z.strictObject({ sha256: z.string(), size: z.int() });

/** The bytes go to their place first; the row that names them becomes visible with the commit. */
export const stageFile = (files: FileStore, { mediaType, file, picture }: FinishedUpload) =>
  defineCommand(
    { ...fileOperations.uploadFile, input: stagedInput },
    {
      locks: () => [],
      async execute({ tx, actor, now, newId }) {
        const id = newId();
        const { hash, size } = file;
        await files.take(tx, picture ? [file, picture.thumbnail] : [file]);
        const [width, height] = [picture?.width ?? null, picture?.height ?? null];
        await tx.stagedFile.create({
          data: {
            ...{ id, hash, size, mediaType, width, height, uploadedBy: actor.personId, uploadedAt: now },
            thumbnailHash: picture?.thumbnail.hash ?? null,
            thumbnailSize: picture?.thumbnail.size ?? null,
          },
        });
        const keptUntil = new Date(now.getTime() + stagedFor).toISOString();
        return {
          reply: { id, hash, size, mediaType, width, height, keptUntil },
          subjects: [{ kind: 'file', id, after: 1 }],
          facts: { hash, size, mediaType, thumbnailHash: picture?.thumbnail.hash ?? null },
        };
      },
    },
  );
