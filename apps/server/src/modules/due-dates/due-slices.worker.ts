import { answerFromDatabase } from '../../platform/database/answer-from-database.ts';
import { dueSlice } from './due-slices.ts';

answerFromDatabase(dueSlice);
