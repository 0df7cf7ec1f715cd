import { directives } from '../directives/index.ts';

const colons = { leaf: '::', container: ':::', text: ':' } as const;

const forms = {
  leaf: 'on a line of its own',
  container: 'with content, closed by :::',
  text: 'within a sentence',
} as const;

/** Every name that the format has, each once. */
export const describedNames: readonly string[] = [...new Set(directives.map(({ name }) => name))];

/** The page of the format reference for a directive in all its forms; `null` for a name that is none. */
export function directiveText(written: string): string | null {
  const name = written.replace(/^:+/, '');
  const found = directives.filter((one) => one.name === name);
  return found.length === 0 ? null : found.map(formText).join('\n');
}

function formText({ form, name, label, summary, attributes, example }: (typeof directives)[number]): string {
  const rows = Object.entries(attributes).map(([attribute, { expects, required }]) => [
    attribute === 'id' ? '#id' : attribute,
    `${expects}${required ? ' (needed)' : ''}`,
  ]);
  const width = Math.max(0, ...rows.map(([attribute = '']) => attribute.length));
  return [
    `${colons[form]}${name}, ${forms[form]}${label === 'none' ? ', without a label' : ''}`,
    '',
    summary,
    '',
    ...rows.map(([attribute = '', expects]) => `  ${attribute.padEnd(width)}  ${expects}`),
    '',
    ...example.split('\n').map((line) => `    ${line}`),
    '',
  ].join('\n');
}
