export {
  type Authorised,
  namesOfAble,
  requireAuthorisation,
  requireSupervised,
  usableBy,
} from './authorise.ts';
export type { HeldAuthorisation } from './held-authorisation.ts';
export { shopSubjectId } from './shop-subject.ts';
export {
  type Countersignature,
  contentHashOf,
  type SignOffToWrite,
  writeCountersignature,
  writeSignOff,
} from './sign-off.ts';
