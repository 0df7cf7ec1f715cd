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
export { reportLookAlikes } from './look-alikes.ts';
export { type PlannedVisit, planVisit } from './plan-visit.ts';
export { judgeRequest, type NamedGuide } from './request/judge-request.ts';
export { type DayRequest, type RequestedDay, readDay } from './request/read-day.ts';
export { readVisit } from './request/read-visit.ts';
export type { VisitRequest } from './request/request.ts';
export { visitRules } from './rules.ts';
