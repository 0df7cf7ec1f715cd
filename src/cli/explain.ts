import type { RuleCard, RuleExample } from '../diagnostics/rule-card.ts';
import { nearest } from '../diagnostics/suggest.ts';
import { ruleCards } from '../shop/index.ts';
import { describedNames, directiveText } from './describe-directive.ts';
import { type ExitCode, type Io, UsageError } from './io.ts';

/** `baybook explain NAME`: prints a rule's card or a directive's reference; without a name, lists all. */
export function explain(code: string | undefined, io: Io): ExitCode {
  if (code === undefined) {
    io.out(`Directives: ${wrapped(describedNames.join(', '), Math.min(io.width, 80))}\n\n`);
    io.out(ruleCards.map((card) => `${card.code}\n    ${card.title}\n`).join(''));
    return 0;
  }
  const directive = directiveText(code);
  if (directive !== null) {
    io.out(directive);
    return 0;
  }
  const card = ruleCards.find((one) => one.code === code);
  if (!card) {
    const near = nearest(code, [...describedNames, ...ruleCards.map((one) => one.code)]);
    const help = near.length > 0 ? `; did you mean ${near.join(' or ')}?` : '; "baybook explain" lists all';
    throw new UsageError(`there is no rule or directive "${code}"${help}`);
  }
  io.out(cardText(card, io.width));
  return 0;
}

function cardText({ code, severity, title, why, bad, good }: RuleCard, width: number): string {
  return [
    `${title} (${code}, ${severity})`,
    '',
    wrapped(why, Math.min(width, 80)),
    ...shown('This is found:', bad),
    ...shown('This is right:', good),
    '',
  ].join('\n');
}

/** An example as its author writes it; an empty file in it stands for a file that is not there. */
function shown(heading: string, example: RuleExample): string[] {
  if (example === '') return [];
  const files = typeof example === 'string' ? [['', example] as const] : Object.entries(example);
  const parts = files.flatMap(([path, text]) => {
    if (text === '') return [`  (no ${path})`];
    return [
      ...(path === '' ? [] : [`  ${path}`]),
      ...excerptLines(text).map((line) => `    ${line}`.trimEnd()),
    ];
  });
  return ['', heading, '', ...parts];
}

function excerptLines(text: string): string[] {
  const lines = text
    .trimEnd()
    .split('\n')
    .map((line) => (line.length > 160 ? `${line.slice(0, 160)}…` : line));
  return lines.length > 40 ? [...lines.slice(0, 40), '…'] : lines;
}

function wrapped(text: string, width: number): string {
  const lines: string[] = [''];
  for (const word of text.split(' ')) {
    const last = lines.at(-1) ?? '';
    if (last !== '' && last.length + 1 + word.length > width) lines.push(word);
    else lines[lines.length - 1] = last === '' ? word : `${last} ${word}`;
  }
  return lines.join('\n');
}
