export { DueDatesModule } from './due-dates.module.ts';
export { KeptDue } from './kept-due.ts';
