export { diskFiles } from './disk-files.ts';
export { inspect } from './inspect.ts';
export type { Inspection } from './inspection.ts';
export { memoryFiles } from './memory-files.ts';
export { ruleCards } from './rule-cards.ts';
export type { Listing, WorkspaceFiles } from './workspace-files.ts';
