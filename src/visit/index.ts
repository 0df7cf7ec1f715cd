export { reportConflicts } from './conflicts.ts';
export {
  type DayLine,
  type DayList,
  type DaySupply,
  type DayTool,
  dayList,
  type PlannedJob,
} from './day.ts';
export { ledgerErrors } from './judge.ts';
export { judgeRequest, type NamedGuide } from './judge-request.ts';
export { reportLookAlikes } from './look-alikes.ts';
export { type PlannedVisit, planVisit } from './plan-visit.ts';
export { type DayRequest, type RequestedDay, readDay } from './read-day.ts';
export { readVisit } from './read-visit.ts';
export type { VisitRequest } from './request.ts';
export { visitRules } from './rules.ts';
