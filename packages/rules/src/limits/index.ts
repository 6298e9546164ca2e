export { implausible } from './implausible.ts';
export { judge, type Limit } from './judge.ts';
export { remainingOverhauls } from './remaining.ts';
