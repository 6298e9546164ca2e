export { KeptDue } from './kept-due.ts';
