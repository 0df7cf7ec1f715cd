import { yamlValue } from '../desk/facts.ts';
import { toFill } from '../desk/new-guide.ts';
import { fillIn } from '../shop/marked-places.ts';
import type { DraftThing, Inventory } from './inventory.ts';
import { attribute, escaped, inMarkedPlace } from './read/markdown-text.ts';

/** The front matter, and what is said of where the draft comes from. */
export function frontOf(title: string, platform: string, from: string): readonly string[] {
  const named = title === '' ? `${fillIn} what is fitted, and where` : title;
  return [
    '---',
    `title: ${yamlValue(named)}`,
    `platform: ${platform}`,
    '---',
    '',
    `${fillIn} when all of it has been held against the old guide, ${inMarkedPlace(from)}; then strike this line, and the old words in the comments.`,
    '',
  ];
}

const kinds = ['wear', 'tool', 'supply', 'kit'] as const;

/** What the job needs: all that is declared of it, and a marked place for each kind of which nothing is. */
export function needLines({ things }: Inventory, decide: readonly string[]): readonly string[] {
  const lines = kinds.flatMap((kind) => {
    const declared = things.filter((thing) => thing.kind === kind).flatMap(declaration);
    return [...(declared.length > 0 ? declared : [toFill[kind]]), ''];
  });
  return [
    '## What you need {#need}',
    '',
    ...lines,
    '',
    toFill.condition,
    '',
    ...decide.flatMap((line) => [line, '']),
    '',
  ];
}

/** What comes off the vehicle. */
export function offLines({ things }: Inventory): readonly string[] {
  const off = things.filter(({ kind }) => kind === 'part' || kind === 'fastener' || kind === 'connector');
  return off.length === 0 ? [] : ['## What comes off {#off}', '', ...off.flatMap(declaration), ''];
}

function declaration({
  kind,
  id,
  label,
  noun,
  count,
  eachSide,
  attributes,
  doubts,
}: DraftThing): readonly string[] {
  const facts = [
    `#${id}`,
    ...(count !== null && (count > 1 || kind === 'fastener') ? [`count=${count}`] : []),
    ...(eachSide ? ['side=each'] : []),
    ...[...attributes].map(([name, value]) => attribute(name, value)),
  ];
  const name = label === null ? '' : `[${escaped(label)}]`;
  const decide = doubts.flatMap((what) => [
    '',
    `${fillIn} ${inMarkedPlace(what)} (${inMarkedPlace(noun)})`,
    '',
  ]);
  return [`::${kind}${name}{${facts.join(' ')}}`, ...decide];
}
