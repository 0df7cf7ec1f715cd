export { diskFiles } from './files/disk-files.ts';
export { memoryFiles } from './files/memory-files.ts';
export type { Listing, WorkspaceFiles } from './files/workspace-files.ts';
export { inspect } from './inspect/inspect.ts';
export type { Inspection } from './inspect/inspection.ts';
export { ruleCards } from './rule-cards.ts';
