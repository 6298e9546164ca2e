export { type Standing, standingsOfUnits } from './standings.ts';
export { standingsOnVisit } from './visit.ts';
