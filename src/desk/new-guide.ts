import { nounOf } from '../job/words/noun.ts';
import { fillIn } from '../shop/marked-places.ts';
import { type NewKit, type NewOption, optionLines, yamlValue } from './facts.ts';

/** What is known of a guide before it is written. */
interface NewGuide {
  readonly title: string;
  /** The id of its platform. */
  readonly platform: string;
  /** Options that its platform does not have. */
  readonly options: readonly NewOption[];
  readonly kit: readonly NewKit[];
}

/** What is to be filled where nothing is declared of a kind. */
export const toFill = {
  wear: `${fillIn} what is worn, a line each, as in \`::wear{#gloves}\`, or \`::none{of=wear}\``,
  tool: `${fillIn} the tools, a line each with an id of tools.yaml, as in \`::tool{#bit-t25}\`, or \`::none{of=tools}\``,
  supply: `${fillIn} the supplies, as in \`::supply[Masking tape]{#tape quantity="2 m" temporary}\`, or \`::none{of=supplies}\``,
  kit: `${fillIn} what is in the box, as in \`::kit[Cradle]{#cradle}\`, or \`::none{of=kit}\``,
  condition: `${fillIn} what must hold while the work goes on, as in \`::condition[Battery isolated]{#battery-off}\`, or \`::none{of=conditions}\``,
} as const;

/** The text of a new guide: what is known stands in it, and what only its author knows is marked. */
export function newGuide({ title, platform, options, kit }: NewGuide): string {
  return lines(
    '---',
    `title: ${yamlValue(title)}`,
    `platform: ${platform}`,
    ...optionLines(options),
    '---',
    '',
    `${fillIn} in two sentences what is fitted, and what has to be known before the first step.`,
    ...options.map(
      ({ id }) =>
        `${fillIn} what is different with the option ${id}, with \`when=${id}\` on the line or in a \`:where[…]{when=${id}}\`.`,
    ),
    '',
    '## What you need {#need}',
    '',
    toFill.wear,
    '',
    toFill.tool,
    '',
    toFill.supply,
    '',
    ...(kit.length === 0 ? [toFill.kit] : kit.map(kitLine)),
    '',
    toFill.condition,
    '',
    '## What comes off {#off}',
    '',
    `${fillIn} each part that comes off and what holds it, as in \`::part[Trim]{#trim}\` and \`::fastener[Trim screw]{#trim-screw drive=T25 count=2 holds=trim}\``,
    '',
    '## Strip down {#strip-down}',
    '',
    `::step[${fillIn} what is done first]{#first}`,
    '',
    `${fillIn} what the hands do, as in \`:remove[trim-screw]{with=bit-t25}, then :remove[trim].\``,
    '',
    '## Fit {#fit}',
    '',
    ...kit.flatMap((one) => [`::step[Fit the ${nounIn(one)}]{#fit-${one.id}}`, '', `:fit[${one.id}].`, '']),
    ...(kit.length === 0
      ? [`::step[${fillIn} what is fitted]{#fit-it}`, '', `${fillIn} how it is fitted`, '']
      : []),
    '## Refit {#refit}',
    '',
    '::reverse{of=strip-down}',
    '',
    '## Prove it {#prove}',
    '',
    ':::prove[Before the vehicle leaves]',
    `- ${fillIn} what is tried, and what must be seen`,
    ':::',
  );
}

/** Lines as the text of a file. */
export function lines(...all: readonly string[]): string {
  return `${all.join('\n')}\n`;
}

function kitLine({ id, label, count }: NewKit): string {
  return `::kit[${escaped(label)}]{#${id}${count > 1 ? ` count=${count}` : ''}}`;
}

/** What a step that fits it says, as actions print it. */
function nounIn({ label, count }: NewKit): string {
  const { singular, plural } = nounOf(label);
  return escaped(count > 1 ? plural : singular);
}

function escaped(label: string): string {
  return label.replace(/[[\]]/g, '\\$&');
}
