import type { ProblemKind } from '../problems.ts';

export const fileProblems = {
  'not-a-file': {
    status: 415,
    title: 'The request does not carry a file',
    next: 'Send the bytes of one file as the body, with its content type.',
  },
  'file-too-large': {
    status: 413,
    title: 'The file is too large',
    next: 'Take the picture with fewer pixels, or send a smaller document. The limit is 15 megabytes.',
  },
  'file-kind-refused': {
    status: 415,
    title: 'This kind of file is not kept here',
    next: 'Send a JPEG, PNG or WebP picture, or a PDF. A camera that writes HEIC has a setting for JPEG.',
  },
  'picture-too-large': {
    status: 422,
    title: 'The picture has too many pixels',
    next: 'Take it again with fewer pixels.',
  },
  'picture-damaged': {
    status: 422,
    title: 'The picture cannot be read to its end',
    next: 'Take it again, or send it again if it was cut off on the way.',
  },
  'pdf-refused': {
    status: 422,
    title: 'This PDF cannot be kept',
    next: 'Print it to a new PDF without protection, scripts or files inside, and send that.',
  },
  'upload-broken': {
    status: 400,
    title: 'The file did not arrive whole',
    next: 'Nothing was kept. Send it again.',
  },
  'upload-gone': {
    status: 409,
    title: 'The file that was sent is no longer waiting',
    next: 'Send the file again; one that nothing names is kept for a day.',
  },
  'photo-struck': {
    status: 409,
    title: 'This photo has been struck already',
    next: 'Look at the reason that was given; the photo stays on record.',
  },
} as const satisfies Record<string, ProblemKind>;
