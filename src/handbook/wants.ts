import { actionRules } from '../job/actions/actions.ts';

/** Something that an author wants to do, and what is read about it. */
interface Want {
  readonly want: string;
  /** Names of chapters, directives and files. */
  readonly names: readonly string[];
}

/** The way into the handbook: every chapter, file and directive stands under what it is wanted for, each once. */
export const wants: readonly Want[] = [
  {
    want: 'Write a first guide',
    names: ['first-guide', 'old-guides', 'whole-guide', 'editors', 'shop.yaml', 'platform.md', 'guide.md'],
  },
  {
    want: 'Say what the job needs',
    names: ['wear', 'tool', 'supply', 'kit', 'none', 'tools.yaml', 'supplies.yaml'],
  },
  {
    want: 'Say what comes off and what holds it',
    names: ['part', 'fastener', 'connector', 'fasteners.yaml'],
  },
  { want: 'Write the work', names: ['step', 'actions', ...actionRules.map(({ verb }) => verb)] },
  {
    want: 'Say it for one side, for some vehicles, or for what is found',
    names: ['sides', 'builds', 'where', 'inspection'],
  },
  { want: 'Have what came off put back', names: ['reverse', 'refit-note'] },
  { want: 'Say what must hold, and what is set', names: ['condition', 'setting'] },
  { want: 'Have it tightened', names: ['torque', 'sequence'] },
  { want: 'Warn', names: ['danger', 'warning', 'caution', 'notice'] },
  { want: 'Show it', names: ['photographs', 'drawing', 'figure', 'mark', 'zone'] },
  {
    want: 'Cut and drill to a template',
    names: [
      'measuring',
      'printing',
      'cut-template',
      'datum',
      'outline',
      'hole',
      'slot',
      'pattern',
      'arc',
      'keep-out',
    ],
  },
  { want: 'Prove it and keep the evidence', names: ['prove', 'photo', 'rating', 'circuit'] },
  { want: 'Tell more', names: ['note', 'why', 'owner'] },
  { want: 'Share work between guides', names: ['procedure', 'procedure.md'] },
  { want: 'Plan several jobs in one visit', names: ['visits', 'visit.md', 'day.yaml'] },
  { want: 'Check, publish and work by it', names: ['checking', 'site', 'machines', 'bay'] },
  { want: 'Stand behind a guide', names: ['releases', 'releases.yaml'] },
];
