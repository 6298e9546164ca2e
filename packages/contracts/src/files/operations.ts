import { z } from 'zod';
import { command, read } from '../operation.ts';
import type { Role } from '../roles.ts';
import { changed, id, instant, line, listOf, page } from '../values.ts';
import { who } from '../work-orders/traveler-shapes.ts';

const bench: readonly Role[] = ['technician', 'inspector'];
const anyCamera: readonly Role[] = ['front-desk', ...bench];
/** Photos, and papers of trainings. */
const anySender: readonly Role[] = [...anyCamera, 'manager', 'administrator'];

/** What a photo may show. */
export const photoSubjects = ['finding', 'traveler', 'traveler-step', 'work-order'] as const;
const photoSubject = z.enum(photoSubjects).meta({ id: 'PhotoSubject' });
export type PhotoSubject = (typeof photoSubjects)[number];

const mediaType = z.enum(['image/jpeg', 'application/pdf']);

/** One line without control characters or marks that turn the direction of writing: it is shown beside the picture for good. */
const shows = z
  .string()
  .trim()
  .min(3, 'Say what it shows')
  .max(200)
  .regex(
    /^[^\p{Cc}\u2028\u2029\u202a-\u202e\u2066-\u2069]*$/u,
    'Use one line of plain text, without control characters',
  );

const photo = {
  /** From the upload’s reply. */
  fileId: id,
  /** What it shows: read aloud in place of the picture. */
  title: shows,
  /** When it was taken, as the device says. */
  takenAt: instant.optional(),
};
const photoAdded = changed.extend({ fileHash: z.string() }).meta({ id: 'PhotoAdded' });
const addingProblems = ['upload-gone', 'wrong-state'] as const;

const photoRow = z
  .object({
    id,
    subject: z.object({ kind: photoSubject, id }),
    workOrderId: id,
    title: z.string(),
    mediaType,
    /** Pixels as kept; null for a document. */
    width: z.int().nullable(),
    height: z.int().nullable(),
    size: z.int(),
    takenAt: instant.nullable(),
    addedBy: who,
    addedAt: instant,
    struck: z.object({ reason: z.string(), by: who, at: instant }).nullable(),
  })
  .meta({ id: 'PhotoRow' });

export const fileOperations = {
  uploadFile: command({
    id: 'upload-file',
    noun: 'files',
    path: '/api/files',
    access: anySender,
    summary:
      'Send one picture or PDF, at most 15 megabytes. Its kind is decided by its content; a picture is drawn anew without place and camera data. It waits a day to be named by a record',
    input: z.strictObject({}),
    takes: ['image/jpeg', 'image/png', 'image/webp', 'application/pdf', 'application/octet-stream'],
    output: z
      .object({
        id,
        hash: z.string(),
        size: z.int(),
        mediaType,
        width: z.int().nullable(),
        height: z.int().nullable(),
        keptUntil: instant,
      })
      .meta({ id: 'FileUploaded' }),
    problems: [
      'not-a-file',
      'file-too-large',
      'file-kind-refused',
      'picture-too-large',
      'picture-damaged',
      'pdf-refused',
      'upload-broken',
    ],
  }),
  addPhoto: command({
    id: 'add-photo',
    noun: 'files',
    path: '/api/findings/:findingId/photos',
    access: bench,
    summary: 'Put an uploaded file on record with a finding',
    input: z.strictObject({ findingId: id, ...photo }),
    output: photoAdded,
    touches: ['findings'],
    problems: addingProblems,
  }),
  addTravelerPhoto: command({
    id: 'add-traveler-photo',
    noun: 'files',
    path: '/api/travelers/:travelerId/photos',
    access: bench,
    summary: 'Put an uploaded file on record with the traveler of a part',
    input: z.strictObject({ travelerId: id, ...photo }),
    output: photoAdded,
    touches: ['work-orders'],
    problems: addingProblems,
  }),
  addStepPhoto: command({
    id: 'add-step-photo',
    noun: 'files',
    path: '/api/traveler-steps/:stepId/photos',
    access: bench,
    summary: 'Put an uploaded file on record with one step',
    input: z.strictObject({ stepId: id, ...photo }),
    output: photoAdded,
    touches: ['work-orders'],
    problems: addingProblems,
  }),
  addConditionPhoto: command({
    id: 'add-condition-photo',
    noun: 'files',
    path: '/api/work-orders/:workOrderId/photos',
    access: anyCamera,
    summary: 'Put an uploaded file on record with the condition of an arriving unit',
    input: z.strictObject({ workOrderId: id, ...photo }),
    output: photoAdded,
    touches: ['work-orders'],
    problems: addingProblems,
  }),
  strikePhoto: command({
    id: 'strike-photo',
    noun: 'files',
    path: '/api/photos/:photoId/strike',
    access: anyCamera,
    summary: 'Strike a photo with the reason; it stays on record. One’s own, or anyone’s as an inspector',
    input: z.strictObject({ photoId: id, reason: line }),
    output: changed,
    touches: ['findings', 'work-orders'],
    problems: ['photo-struck'],
  }),
  listPhotos: read({
    id: 'list-photos',
    noun: 'files',
    path: '/api/photos',
    access: 'signed-in',
    summary: 'Photos of one finding, traveler, step or unit, oldest first, struck ones included',
    input: z.strictObject({ ...page, subjectKind: photoSubject, subjectId: id }),
    output: listOf(photoRow),
  }),
  photoFile: read({
    id: 'photo-file',
    noun: 'files',
    path: '/api/photos/:photoId/file',
    access: 'signed-in',
    summary: 'The picture or document itself',
    input: z.strictObject({ photoId: id }),
    output: z.any(),
    produces: '*/*',
    problems: ['file-damaged'],
  }),
  photoThumbnail: read({
    id: 'photo-thumbnail',
    noun: 'files',
    path: '/api/photos/:photoId/thumbnail',
    access: 'signed-in',
    summary: 'The picture small, longest side 320 pixels',
    input: z.strictObject({ photoId: id }),
    output: z.any(),
    produces: 'image/jpeg',
    problems: ['file-damaged'],
  }),
} as const;

export type PhotoRow = z.output<typeof photoRow>;
