export { takesStep } from './conditions.ts';
export { mayRepairAgain } from './repair-loop.ts';
export { type RoutedStep, type RouteFault, routeFaults } from './route-faults.ts';
export { type LaidStep, type Standing, standingOf } from './standing.ts';
