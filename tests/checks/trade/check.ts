import type { Finding } from '../../../src/diagnostics/finding.ts';
import type { RuleExample } from '../../../src/diagnostics/rule-card.ts';
import { inspect, memoryFiles } from '../../../src/shop/index.ts';
import { exampleWorkspace } from '../../example-workspace.ts';

/** What the rules of the trade say, each with the text that it and its second places point at. */
export interface Told {
  readonly code: string;
  readonly message: string;
  readonly at: string;
  readonly notes: readonly string[];
  readonly mend: string | undefined;
}

/** Every finding of a guide's body or of a workspace, with no-break spaces shown as ordinary ones. */
export async function check(example: RuleExample): Promise<readonly Told[]> {
  const files = exampleWorkspace(example);
  const { findings } = await inspect(memoryFiles(files));
  const textAt = ({ file, start, end }: Finding['at']) => (files[file] ?? '').slice(start, end);
  return findings.map(({ code, message, at, notes, suggestion }) => ({
    code,
    message: message.replace(/\u00a0/g, ' '),
    at: textAt(at),
    notes: notes.map((note) => (note.at ? textAt(note.at) : note.message)),
    mend: suggestion?.text,
  }));
}

/** The codes alone. */
export async function codesOf(example: RuleExample): Promise<readonly string[]> {
  return (await check(example)).map(({ code }) => code);
}
