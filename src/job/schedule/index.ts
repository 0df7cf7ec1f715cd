export { schedulesOf } from './schedule.ts';
export { helperWords, secondTechnicianWords } from './words.ts';
