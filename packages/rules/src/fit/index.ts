export {
  bandWords,
  type FitSpec,
  fitProposed,
  judgeFit,
  missingFit,
  type PlaceFitted,
  packWords,
  sayFit,
} from './judge-fit.ts';
export { proposeShims, thicknessOf } from './propose-shims.ts';
