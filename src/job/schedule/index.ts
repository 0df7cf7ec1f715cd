export { schedulesOf } from './schedule.ts';
export { rememberingSolver, type Solver } from './solve.ts';
export { helperWords, secondTechnicianWords } from './words.ts';
