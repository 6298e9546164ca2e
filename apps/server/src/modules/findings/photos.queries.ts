import type { fileOperations, PhotoRow, PhotoSubject } from '@hubwright/contracts/files/operations';
import type { Input, Reply } from '@hubwright/contracts/operation';
import { Inject, Injectable } from '@nestjs/common';
import { found } from '../../platform/command/version.ts';
import { Reads } from '../../platform/database/reads.ts';
import type { FileToSend } from '../../platform/files/send-file.ts';

interface PhotoSqlRow {
  readonly id: string;
  readonly subject_kind: PhotoSubject;
  readonly subject_id: string;
  readonly work_order_id: string;
  readonly title: string;
  readonly media_type: PhotoRow['mediaType'];
  readonly width: number | null;
  readonly height: number | null;
  readonly size: number;
  readonly taken_at: Date | null;
  readonly added_at: Date;
  readonly added_by: PhotoRow['addedBy'];
  readonly reason: string | null;
  readonly struck_at: Date | null;
  readonly struck_by: PhotoRow['addedBy'] | null;
}

const person = (column: string) =>
  `coalesce((SELECT jsonb_build_object('id', p.id, 'displayName', p.display_name, 'initials', p.initials) FROM people p WHERE p.id = ${column}),
    jsonb_build_object('id', ${column}, 'displayName', 'Unknown person', 'initials', '?'))`;

/** $1 kind and $2 id of the subject, $3 photo to start after, $4 most rows. Ids grow with time. */
const photosSql = `
  SELECT h.id::text, h.subject_kind, h.subject_id::text, h.work_order_id::text, h.title, h.media_type, h.width, h.height, f.size,
    h.taken_at, h.added_at, ${person('h.added_by')} AS added_by, s.reason, s.struck_at,
    CASE WHEN s.id IS NULL THEN NULL ELSE ${person('s.struck_by')} END AS struck_by
  FROM photos h JOIN stored_files f ON f.hash = h.file_hash LEFT JOIN struck_photos s ON s.photo_id = h.id
  WHERE h.subject_kind = $1 AND h.subject_id = $2 AND ($3::uuid IS NULL OR h.id > $3)
  ORDER BY h.id LIMIT $4`;

@Injectable()
export class PhotoQueries {
  constructor(@Inject(Reads) private readonly reads: Reads) {}

  async list(input: Input<typeof fileOperations.listPhotos>): Promise<Reply<typeof fileOperations.listPhotos>> {
    const rows = await this.reads.sql<PhotoSqlRow>(photosSql, [
      input.subjectKind,
      input.subjectId,
      input.after ?? null,
      input.limit + 1,
    ]);
    const shown = rows.slice(0, input.limit);
    return { rows: shown.map(photoRow), next: rows.length > input.limit ? (shown.at(-1)?.id ?? null) : null };
  }

  async file({ photoId }: Input<typeof fileOperations.photoFile>): Promise<FileToSend> {
    const row = await this.reads.models.photo.findUnique({ where: { id: photoId }, include: { file: true } });
    const { file } = found(row, 'This photo');
    return named(file, `photo-${photoId}`);
  }

  async thumbnail({ photoId }: Input<typeof fileOperations.photoThumbnail>): Promise<FileToSend> {
    const row = await this.reads.models.photo.findUnique({ where: { id: photoId }, include: { thumbnail: true } });
    return named(found(row?.thumbnail, 'A small picture of this'), `photo-${photoId}-small`);
  }
}

function named({ hash, size, mediaType }: Omit<FileToSend, 'fileName'>, name: string): FileToSend {
  return { hash, size, mediaType, fileName: `${name}.${mediaType === 'application/pdf' ? 'pdf' : 'jpg'}` };
}

function photoRow(row: PhotoSqlRow): PhotoRow {
  return {
    id: row.id,
    subject: { kind: row.subject_kind, id: row.subject_id },
    workOrderId: row.work_order_id,
    title: row.title,
    mediaType: row.media_type,
    width: row.width,
    height: row.height,
    size: row.size,
    takenAt: row.taken_at?.toISOString() ?? null,
    addedBy: row.added_by,
    addedAt: row.added_at.toISOString(),
    struck:
      row.struck_at && row.struck_by
        ? { reason: row.reason ?? '', by: row.struck_by, at: row.struck_at.toISOString() }
        : null,
  };
}
