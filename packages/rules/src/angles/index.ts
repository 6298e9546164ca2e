export { type AnglesAsked, acceptedAngles, anglesFor, type BladeStop, type StopAsked } from './asked.ts';
export {
  type AngleReading,
  type AngleStanding,
  bladesOf,
  judgeAngle,
  judgeAngles,
  spreadsOf,
} from './judge-angles.ts';
export { sayAngles } from './say-angles.ts';
