import type { RuleCard } from '../diagnostics/rule-card.ts';

/** What is under the examples' last map of keys: a platform, whose front matter is the shortest. */
const platform = (yaml: string) => ({ 'platforms/example-van.md': `---\n${yaml}\n---\n\nA van.\n` });
const good = platform('title: Example van\noptions:\n  fog: Front fog lamps');

export const yamlBroken: RuleCard = {
  code: 'yaml-broken',
  severity: 'error',
  title: 'YAML that cannot be read',
  why: 'Baybook cannot tell what the front matter or the file says from this point on, so it reads none of it. The usual causes are a value with a colon in it that is not in quotes, a quote that is not closed, and lines of one list that do not begin at the same column.',
  bad: platform('title: Van: the long one\noptions:\n  fog: Front fog lamps'),
  good: platform('title: "Van: the long one"\noptions:\n  fog: Front fog lamps'),
};

export const yamlTab: RuleCard = {
  code: 'yaml-tab',
  severity: 'error',
  title: 'A tab where YAML wants spaces',
  why: 'YAML indents with spaces only. A tab looks the same in the editor and breaks the file.',
  bad: platform('title: Example van\noptions:\n\tfog: Front fog lamps'),
  good,
};

export const yamlDuplicateKey: RuleCard = {
  code: 'yaml-duplicate-key',
  severity: 'error',
  title: 'A key that is written twice',
  why: 'Only one of the two can count, and nobody sees which. The second one is often a line that was copied and never changed.',
  bad: platform('title: Example van\ntitle: Example lorry\noptions:\n  fog: Front fog lamps'),
  good,
};

export const yamlAliasUnknown: RuleCard = {
  code: 'yaml-alias-unknown',
  severity: 'error',
  title: 'A value that begins with an asterisk',
  why: 'YAML takes `*name` for a reference to a value that was named with `&name` earlier in the file. Where no such name exists the value is most likely text, and text that begins with an asterisk needs quotes.',
  bad: platform('title: *van\noptions:\n  fog: Front fog lamps'),
  good: platform('title: "*van"\noptions:\n  fog: Front fog lamps'),
};

const bomb = [
  'title: Example van',
  'options:',
  '  a: &a [x, x, x, x, x, x, x, x, x, x]',
  '  b: &b [*a, *a, *a, *a, *a, *a, *a, *a, *a, *a]',
  '  c: &c [*b, *b, *b, *b, *b, *b, *b, *b, *b, *b]',
  '  d: [*c, *c, *c, *c, *c, *c, *c, *c, *c, *c]',
].join('\n');

export const yamlAliasBomb: RuleCard = {
  code: 'yaml-alias-bomb',
  severity: 'error',
  title: 'References that multiply without end',
  why: 'A few lines of references to references can stand for more values than a computer has room for. No guide needs that, so Baybook refuses it.',
  bad: platform(bomb),
  good,
};

export const yamlNotAMap: RuleCard = {
  code: 'yaml-not-a-map',
  severity: 'error',
  title: 'Not a list of keys with values',
  why: "Front matter and the workspace's own files are lists of keys with values (`title: …`). Anything else there cannot be used.",
  bad: platform('Example van'),
  good,
};

export const yamlVersion: RuleCard = {
  code: 'yaml-version',
  severity: 'error',
  title: 'A line that asks for another YAML',
  why: 'Baybook reads YAML 1.2. Under YAML 1.1 the same text means something else: `no` and `off` become false, and `12:30` becomes a number.',
  bad: { 'fasteners.yaml': '%YAML 1.1\n---\nhex-head-screw: {name: Hex head screw}\n' },
  good: { 'fasteners.yaml': 'hex-head-screw: {name: Hex head screw}\n' },
};

export const yamlNeedsQuotes: RuleCard = {
  code: 'yaml-needs-quotes',
  severity: 'error',
  title: 'A number that YAML would change',
  why: 'YAML reads `010` as ten, `1.10` as 1.1 and `1e3` as a thousand. A part number or a revision written so would be printed wrongly. In quotes it stays as it was written.',
  bad: platform('title: 010\noptions:\n  fog: Front fog lamps'),
  good: platform('title: "010"\noptions:\n  fog: Front fog lamps'),
};

export const yamlMissingKey: RuleCard = {
  code: 'yaml-missing-key',
  severity: 'error',
  title: 'A key that must be there is missing',
  why: 'Without it the page cannot be made: a guide without a title or a platform has no place in the shop.',
  bad: platform('options:\n  fog: Front fog lamps'),
  good,
};

export const yamlUnknownKey: RuleCard = {
  code: 'yaml-unknown-key',
  severity: 'error',
  title: 'A key that means nothing here',
  why: 'A mistyped key would be dropped without a word, and what it says with it.',
  bad: platform('title: Example van\noption:\n  fog: Front fog lamps'),
  good,
};

export const yamlWrongValue: RuleCard = {
  code: 'yaml-wrong-value',
  severity: 'error',
  title: 'A value of the wrong kind',
  why: 'The key is right but its value cannot be used, such as a word where a number is needed.',
  bad: platform('title: [Example, van]\noptions:\n  fog: Front fog lamps'),
  good,
};

/** The rules of YAML text, in front matter and in the workspace's own files. */
export const yamlRules: readonly RuleCard[] = [
  yamlBroken,
  yamlTab,
  yamlDuplicateKey,
  yamlAliasUnknown,
  yamlAliasBomb,
  yamlNotAMap,
  yamlVersion,
  yamlNeedsQuotes,
  yamlMissingKey,
  yamlUnknownKey,
  yamlWrongValue,
];
