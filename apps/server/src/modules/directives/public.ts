export type { Standing } from './standings.ts';
export { standingsOnVisit } from './visit.ts';
