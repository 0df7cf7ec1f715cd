import type { RuleCard, RuleExample } from '../../diagnostics/rule-card.ts';
import type { Chapter } from '../../handbook/chapters.ts';
import { firstEntries } from '../../handbook/directive-entries.ts';
import { type EntryRow, excerptLines, firstSentence, type HandbookEntry } from '../../handbook/entry.ts';
import { fileEntries } from '../../handbook/file-entries.ts';
import { type HandbookPage, nearestWord, pageOf } from '../../handbook/handbook.ts';
import { wants } from '../../handbook/wants.ts';
import { ruleCards } from '../../shop/index.ts';
import { readChapters } from '../../site/chapters.ts';
import { type ExitCode, type Io, UsageError } from '../io.ts';

/**
 * `baybook explain WORD`: prints the handbook's page of a directive, attribute, file, rule or chapter; a word that has
 * none leads to the nearest. Without a word, lists the pages by what one wants to do; `explain rules` lists the rules.
 */
export async function explain(word: string | undefined, io: Io): Promise<ExitCode> {
  const chapters = await readChapters();
  const width = Math.min(io.width, 80);
  if (word === undefined) {
    io.out(listText(chapters, width));
    return 0;
  }
  if (word === 'rules') {
    io.out(ruleCards.map((card) => `${card.code}\n    ${card.title}\n`).join(''));
    return 0;
  }
  const page = pageOf(word, chapters);
  if (page) {
    io.out(pageText(page, width));
    return 0;
  }
  const near = nearestWord(word, chapters);
  const found = near === null ? null : pageOf(near, chapters);
  if (!found)
    throw new UsageError(`the handbook has nothing on "${word}"; "baybook explain" lists its pages`);
  io.out(`There is no page "${word}"; this is the nearest, "${near}".\n\n${pageText(found, width)}`);
  return 0;
}

function listText(chapters: readonly Chapter[], width: number): string {
  const titles = new Map([
    ...[...firstEntries.values(), ...fileEntries].map(
      ({ name, lead }) => [name, firstSentence(lead)] as const,
    ),
    ...chapters.map(({ name, title }) => [name, title] as const),
  ]);
  const widest = Math.max(...[...titles.keys()].map((name) => name.length));
  const groups = wants.map(({ want, names }) => {
    const lines = names.map((name) => hanging(name, titles.get(name) ?? '', widest, width));
    return `${want}\n${lines.join('')}`;
  });
  const rules = `Understand a finding\n${hanging('rules', `All ${ruleCards.length} rules; each finding names its own`, widest, width)}`;
  return `baybook explain WORD, with one of these words or any attribute, key or rule:\n\n${[...groups, rules].join('\n')}`;
}

/** A name with what is told of it beside it, in a column of its own. */
function hanging(name: string, told: string, widest: number, width: number): string {
  const column = widest + 4;
  const lines = wrapped(told, Math.max(20, width - column));
  return lines.map((line, index) => `  ${(index === 0 ? name : '').padEnd(widest)}  ${line}\n`).join('');
}

function pageText(page: HandbookPage, width: number): string {
  switch (page.kind) {
    case 'entries':
      return page.entries.map((entry) => entryText(entry, width)).join('\n');
    case 'rule':
      return cardText(page.card, width);
    case 'chapter':
      return chapterText(page.chapter);
    case 'rows':
      return page.rows
        .map(({ on, ...row }) => {
          const places = wrapped(`On ${on.join('; ')}.`, width - 2).map((line) => `  ${line}\n`);
          return `${rowText(row, row.name.length, width)}\n${places.join('')}`;
        })
        .join('\n');
  }
}

function entryText({ title, lead, rows, example }: HandbookEntry, width: number): string {
  const widest = Math.max(0, ...rows.map(({ name }) => name.length));
  return [
    title,
    '',
    ...wrapped(lead, width),
    '',
    ...rows.map((row) => rowText(row, widest, width)),
    ...exampleLines(example),
    '',
  ].join('\n');
}

/** A row's name with what is written there, and below it what it means. */
function rowText({ name, expects, means, needed }: EntryRow, widest: number, width: number): string {
  const indent = ' '.repeat(widest + 4);
  const told = wrapped(means, Math.max(20, width - indent.length)).map((line) => `${indent}${line}\n`);
  return `  ${name.padEnd(widest)}  ${expects}${needed ? ' (needed)' : ''}\n${told.join('')}`;
}

/** A chapter as it is written; a link to another one says how to read it here. */
function chapterText({ text }: Chapter): string {
  return text
    .replace(/\]\(([a-z-]+)\.md\)/g, '] (baybook explain $1)')
    .replace(/\[([^\]]+)\] \(baybook/g, '$1 (baybook')
    .replace(/^```(\w+) (\S+)$/gm, '```$1   $2');
}

function cardText({ code, severity, title, why, bad, good }: RuleCard, width: number): string {
  return [
    `${title} (${code}, ${severity})`,
    '',
    ...wrapped(why, width),
    ...shown('This is found:', bad),
    ...shown('This is right:', good),
    '',
  ].join('\n');
}

function shown(heading: string, example: RuleExample): string[] {
  return example === '' ? [] : ['', heading, '', ...exampleLines(example)];
}

/** An example as its author writes it; an empty file in it stands for a file that is not there. */
function exampleLines(example: RuleExample): string[] {
  const files = typeof example === 'string' ? [['', example] as const] : Object.entries(example);
  return files.flatMap(([path, text]) => {
    if (text === '') return [`  (no ${path})`];
    return [
      ...(path === '' ? [] : [`  ${path}`]),
      ...excerptLines(text).map((line) => `    ${line}`.trimEnd()),
    ];
  });
}

function wrapped(text: string, width: number): string[] {
  const lines: string[] = [''];
  for (const word of text.split(' ')) {
    const last = lines.at(-1) ?? '';
    if (last !== '' && last.length + 1 + word.length > width) lines.push(word);
    else lines[lines.length - 1] = last === '' ? word : `${last} ${word}`;
  }
  return lines;
}
