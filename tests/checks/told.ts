import type { RuleExample } from '../../src/diagnostics/rule-card.ts';
import { inspect, memoryFiles } from '../../src/shop/index.ts';
import { noStore } from '../../src/store/store.ts';
import { exampleWorkspace } from '../example-workspace.ts';

/** What a workspace is told, one line for each finding: its code, and the words or the whole file it points at. */
export async function told(example: RuleExample): Promise<readonly string[]> {
  const { findings, sources } = await inspect(memoryFiles(exampleWorkspace(example)), noStore);
  return findings.map(({ code, at }) => {
    const source = sources.get(at.file);
    if (!source || at.end === 0) return `${code}: ${at.file}`;
    return `${code}: ${source.text.slice(at.start, at.end)}`;
  });
}
