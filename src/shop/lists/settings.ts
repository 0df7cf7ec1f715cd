import * as z from 'zod';
import type { Report } from '../../diagnostics/report.ts';
import { finding } from '../../diagnostics/rule-card.ts';
import { readWords, wordsSchema } from '../../guide/index.ts';
import type { ShopSettings } from '../../model/shop.ts';
import type { SourceFile } from '../../source/source-file.ts';
import { wholeFile } from '../../source/span.ts';
import { readYaml, yamlKey, yamlText, yamlYesNo } from '../../syntax/read-yaml.ts';
import { paperNames } from '../../trade/paper.ts';
import { usualWords } from '../../trade/words.ts';
import { resolvePath } from '../files/resolve-path.ts';
import { logoMissing } from '../rules.ts';

export const settingsFile = 'shop.yaml';

const paper = z
  .string()
  .transform((name) => name.toLowerCase())
  .pipe(z.enum(paperNames, { error: `a paper: ${paperNames.join(', ')}` }));

/**
 * Bytes. With the path of a guide and a build of many options behind it, it still fits a code of level M, which
 * holds 2331 bytes (ISO/IEC 18004, table 7, from memory).
 */
const longestAddress = 300;

const crewExpected = 'a whole number from 1 to 9';

const accent = z
  .string({ error: 'text' })
  .regex(/^#([0-9a-f]{3}|[0-9a-f]{6})$/i, { error: 'a colour in quotes, as in "#0b6e5f"' });

const address = z
  .url({ protocol: /^https?$/, error: 'a web address, as in https://guides.example/' })
  .refine((written) => Buffer.byteLength(written) <= longestAddress, {
    error: `a web address of at most ${longestAddress} characters, which a printed code can hold`,
  });

const papers = z.array(paper).min(1, { error: 'a list of at least one paper' }).default(['a4', 'letter']);

const crew = z
  .number({ error: crewExpected })
  .refine((count) => Number.isInteger(count) && count >= 1 && count <= 9, { error: crewExpected })
  .default(1);

const off = yamlKey(
  z.array(yamlText),
  'a list of rules, as in `[sentence-long]`',
  'The rules about plain language that are left out; the others stay.',
);

const plainLanguage = z
  .union([yamlYesNo, z.strictObject({ off })], { error: 'yes, no or a map with "off", a list of rules' })
  .default(true);

/** `shop.yaml`, key by key. */
export const settingsSchema = z.strictObject({
  name: yamlKey(yamlText, 'text', 'What the shop is called, on every page and print.'),
  logo: yamlKey(
    yamlText.optional(),
    'the path of a picture, as in `logo.svg`',
    'Stands at the top of every page and print.',
  ),
  accent: yamlKey(
    accent.optional(),
    'a colour in quotes, as in `"#0b6e5f"`',
    'The colour of links and buttons. It is darkened or lightened as far as reading asks for.',
  ),
  address: yamlKey(
    address.optional(),
    'a web address, as in `https://guides.example/`',
    'Where the site is published. The code on a print leads there; without it, the print says guide, revision and fingerprint.',
  ),
  contact: yamlKey(
    yamlText.optional(),
    'text',
    'Whom a technician asks when a guide does not fit what stands in the bay.',
  ),
  units: yamlKey(
    z.enum(['metric', 'us']).default('metric'),
    '`metric` or `us`',
    'Which units come first where Baybook chooses. Both are always shown.',
  ),
  papers: yamlKey(
    papers,
    'a list of papers, as in `[A4, Letter]`',
    'The papers that cut templates are laid out for; `A3`, `Tabloid` and `single`, one large sheet, too.',
  ),
  crew: yamlKey(crew, crewExpected, 'How many can work on one job. The schedule counts on that many hands.'),
  unreleased: yamlKey(
    z.enum(['plain', 'draft']).default('plain'),
    '`plain` or `draft`',
    'How a guide is printed that is not what was released of it last: as any other, or with DRAFT across each sheet.',
  ),
  'signal-words': yamlKey(
    z.enum(['ansi', 'iso']).default('ansi'),
    '`ansi` or `iso`',
    'The scheme of safety messages: ANSI Z535.6, or ISO 3864-2, which has no word where nobody can be hurt.',
  ),
  words: yamlKey(
    wordsSchema,
    'a map',
    'What the trade calls the vehicle and its sides, on all sheets and in all sentences that Baybook writes.',
  ),
  'plain-language': yamlKey(
    plainLanguage,
    '`yes`, `no`, or a map with `off`',
    'Whether long sentences and vague words are told, as warnings.',
  ),
});

/** Turns every plain-language rule off, in {@link ShopSettings.plainLanguage}. */
const allPlainLanguage = 'plain-language';

/** Reads `shop.yaml`. After a fault the rest of the run goes on with what a shop is by default. */
export function readSettings(
  source: SourceFile,
  files: ReadonlyMap<string, number>,
  report: Report,
): ShopSettings {
  const at = { file: source.path, start: 0, end: source.text.length };
  const read = readYaml({ value: source.text, at }, settingsSchema, report);
  if (!read) return defaultSettings;
  const { value } = read;
  const logo = value.logo === undefined ? null : { value: value.logo, at: read.valueAt(['logo']) };
  const logoPath = logo && resolvePath(source.path, logo.value);
  if (logo && (logoPath === null || !files.has(logoPath)))
    report(finding(logoMissing, logo.at, `there is no picture "${logo.value}" in the workspace`));
  return {
    name: value.name,
    logo: logo && logoPath !== null && files.has(logoPath) ? { value: logoPath, at: logo.at } : null,
    accent: value.accent?.toLowerCase() ?? null,
    address: value.address ?? null,
    contact: value.contact ?? null,
    units: value.units,
    papers: [...new Set(value.papers)],
    crew: value.crew,
    unreleased: value.unreleased,
    signalWords: value['signal-words'],
    words: readWords(value.words, usualWords),
    plainLanguage: { off: new Set(switchedOff(value['plain-language'])) },
    at,
  };
}

/** What a shop is where `shop.yaml` is missing or cannot be read. */
export const defaultSettings: ShopSettings = {
  name: 'Shop',
  logo: null,
  accent: null,
  address: null,
  contact: null,
  units: 'metric',
  papers: ['a4', 'letter'],
  crew: 1,
  unreleased: 'plain',
  signalWords: 'ansi',
  words: usualWords,
  plainLanguage: { off: new Set() },
  at: wholeFile(settingsFile),
};

function switchedOff(setting: boolean | { off: string[] }): string[] {
  if (typeof setting === 'object') return setting.off;
  return setting ? [] : [allPlainLanguage];
}
