import { fileOperations, type PhotoRow, type PhotoSubject } from '@hubwright/contracts/files/operations';
import { addressOf } from '../../api/address.ts';
import { call } from '../../api/call.ts';
import { usePages } from '../../api/pages.ts';

export type Photo = PhotoRow;
/** What photos are shown of. */
export interface Shown {
  readonly kind: PhotoSubject;
  readonly id: string;
}
/** What is said about a file when it is put on record. */
export interface Said {
  readonly fileId: string;
  readonly title: string;
  readonly takenAt?: string;
}

export function usePhotos({ kind, id }: Shown) {
  return usePages(fileOperations.listPhotos, { subjectKind: kind, subjectId: id });
}

export const addOperations = {
  finding: fileOperations.addPhoto,
  traveler: fileOperations.addTravelerPhoto,
  'traveler-step': fileOperations.addStepPhoto,
  'work-order': fileOperations.addConditionPhoto,
} as const;

/** Puts a sent file on record with its subject. */
export function addTo({ kind, id }: Shown, said: Said, key: string) {
  switch (kind) {
    case 'finding':
      return call(addOperations.finding, { findingId: id, ...said }, { key });
    case 'traveler':
      return call(addOperations.traveler, { travelerId: id, ...said }, { key });
    case 'traveler-step':
      return call(addOperations['traveler-step'], { stepId: id, ...said }, { key });
    case 'work-order':
      return call(addOperations['work-order'], { workOrderId: id, ...said }, { key });
  }
}

export const fileAddress = (photo: Photo) => addressOf(fileOperations.photoFile, { photoId: photo.id });
export const thumbnailAddress = (photo: Photo) => addressOf(fileOperations.photoThumbnail, { photoId: photo.id });
export const isPicture = (photo: Photo) => photo.mediaType === 'image/jpeg';
