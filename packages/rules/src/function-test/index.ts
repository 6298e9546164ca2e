export {
  acceptedValue,
  type FunctionTestAsked,
  limitsInWords,
  type ValueAsked,
  valuesAsked,
} from './asked.ts';
export { type FunctionTestMade, judgeFunctionTest, outside, whyImpossible } from './judge.ts';
export { sayFunctionTest } from './say.ts';
