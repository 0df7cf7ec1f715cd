import { z } from 'zod';
import type { Report } from '../diagnostics/report.ts';
import { finding } from '../diagnostics/rule-card.ts';
import { readWords, wordsSchema } from '../guide/index.ts';
import type { ShopSettings } from '../model/shop.ts';
import type { SourceFile } from '../source/source-file.ts';
import { wholeFile } from '../source/span.ts';
import { readYaml, yamlText, yamlYesNo } from '../syntax/read-yaml.ts';
import { paperNames } from '../trade/paper.ts';
import { usualWords } from '../trade/words.ts';
import { resolvePath } from './resolve-path.ts';
import { logoMissing } from './rules.ts';

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

const schema = z.strictObject({
  name: yamlText,
  logo: yamlText.optional(),
  accent: z
    .string({ error: 'text' })
    .regex(/^#([0-9a-f]{3}|[0-9a-f]{6})$/i, { error: 'a colour in quotes, as in "#0b6e5f"' })
    .optional(),
  address: z
    .url({ protocol: /^https?$/, error: 'a web address, as in https://guides.example/' })
    .refine((address) => Buffer.byteLength(address) <= longestAddress, {
      error: `a web address of at most ${longestAddress} characters, which a printed code can hold`,
    })
    .optional(),
  contact: yamlText.optional(),
  units: z.enum(['metric', 'us']).default('metric'),
  papers: z.array(paper).min(1, { error: 'a list of at least one paper' }).default(['a4', 'letter']),
  crew: z
    .number({ error: crewExpected })
    .refine((count) => Number.isInteger(count) && count >= 1 && count <= 9, { error: crewExpected })
    .default(1),
  'signal-words': z.enum(['ansi', 'iso']).default('ansi'),
  words: wordsSchema,
  'plain-language': z
    .union([yamlYesNo, z.strictObject({ off: z.array(yamlText) })], {
      error: 'yes, no or a map with "off", a list of rules',
    })
    .default(true),
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
  const read = readYaml({ value: source.text, at }, schema, report);
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
  signalWords: 'ansi',
  words: usualWords,
  plainLanguage: { off: new Set() },
  at: wholeFile(settingsFile),
};

function switchedOff(setting: boolean | { off: string[] }): string[] {
  if (typeof setting === 'object') return setting.off;
  return setting ? [] : [allPlainLanguage];
}
