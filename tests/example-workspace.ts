import type { RuleExample } from '../src/diagnostics/rule-card.ts';

const frontMatter = '---\ntitle: Example guide\nplatform: example-van\n---\n\n';

const lists: readonly (readonly [string, string])[] = [
  ['wear', 'wear'],
  ['tools', 'tool'],
  ['supplies', 'supply'],
  ['kit', 'kit'],
  ['conditions', 'condition'],
];

/** What cuts or drills asks for eye protection, which most examples have no call to speak of. */
const throwsChips = /(?:^|[^\p{L}\p{N}]):(?:cut|drill)\[/mu;
const eyeProtection = '::wear[Eye protection]{#eye-protection}\n';

/** The smallest workspace without a fault. */
const ordinary: { readonly [path: string]: string } = {
  'shop.yaml': 'name: Example Fitting\n',
  'fasteners.yaml': 'push-clip: {name: Push clip}\n',
  'platforms/example-van.md': '---\ntitle: Example van\noptions:\n  fog: Front fog lamps\n---\n\nA van.\n',
  'example/guide.md': guide('::step[Look around]{#look}\n\nLook behind the edge.\n'),
};

/**
 * The workspace that a rule's example stands for. A text is the body of a guide. A map holds files, which take
 * the place of the ordinary ones; an empty file takes the ordinary one away. A guide without front matter of
 * its own gets some, and a `::none` for each list that it leaves silent.
 */
export function exampleWorkspace(example: RuleExample): { readonly [path: string]: string } {
  const files = typeof example === 'string' ? { 'example/guide.md': example } : example;
  const filled = Object.entries({ ...ordinary, ...files }).flatMap(([path, text]) => {
    if (text === '') return [];
    return [[path, path === 'example/guide.md' && !text.startsWith('---') ? guide(text) : text] as const];
  });
  return Object.fromEntries(filled);
}

function guide(body: string): string {
  const silent = lists.filter(([, leaf]) => !new RegExp(`^::${leaf}\\b`, 'm').test(body));
  const nones = silent
    .filter(([of]) => !body.includes(`::none{of=${of}}`))
    .map(([of]) => (of === 'wear' && throwsChips.test(body) ? eyeProtection : `::none{of=${of}}\n`));
  // Protection that is declared is named, without a line more.
  const heading = nones.includes(eyeProtection) ? 'With :wear[eye-protection], without' : 'Without';
  const opening = nones.length === 0 ? '' : `## ${heading} {#without}\n\n${nones.join('')}\n`;
  return `${frontMatter}${opening}${body.startsWith('#') ? '' : '## Work {#work}\n\n'}${body}`;
}
