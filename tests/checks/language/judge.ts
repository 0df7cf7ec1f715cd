import { languageRules } from '../../../src/checks/language/index.ts';
import { collector } from '../../../src/diagnostics/report.ts';
import { computeJob } from '../../../src/job/index.ts';
import type { Block } from '../../../src/model/block.ts';
import type { Prose } from '../../../src/model/prose.ts';
import { defaultSettings } from '../../../src/shop/lists/settings.ts';
import { guide as guideOf, nowhere } from '../../job/builder.ts';
import type { Labelled, Place } from './labelled.ts';

/** The codes of the plain-language rules that speak about a text in its place. */
export function codesFor(place: Place, text: string, off: readonly string[] = []): readonly string[] {
  const guide = guideOf({ items: [], steps: [{ id: 'step', blocks: [blockOf(place, text)], do: [] }] });
  const settings = { ...defaultSettings, plainLanguage: { off: new Set(off) } };
  const shop = {
    settings,
    crib: new Map(),
    supplies: new Map(),
    fastenerTypes: new Map(),
    ownPictures: new Map(),
    platforms: new Map(),
    guides: [],
    files: new Map(),
  };
  const { findings, report } = collector();
  const lost = {
    ids: new Set<string>(),
    declarations: new Set<string>(),
    nameless: new Set<'thing' | 'place'>(),
    gap: null,
    conditions: false,
  };
  for (const rule of languageRules) rule.run({ guide, job: computeJob(guide), shop, lost }, report);
  return [...new Set(findings.map(({ code }) => code))];
}

/** What the rules got right and wrong about some labelled sentences, label by label. */
export interface Tally {
  readonly hits: number;
  readonly falseAlarms: readonly string[];
  readonly misses: readonly string[];
}

export function tally(labelled: readonly Labelled[]): Tally {
  const judged = labelled.map(([place, text, ...codes]) => ({ text, codes, found: codesFor(place, text) }));
  const told = (text: string, code: string) => `${code}: ${text}`;
  return {
    hits: judged.reduce(
      (sum, { codes, found }) => sum + codes.filter((code) => found.includes(code)).length,
      0,
    ),
    falseAlarms: judged.flatMap(({ text, codes, found }) =>
      found.flatMap((code) => (codes.includes(code) ? [] : [told(text, code)])),
    ),
    misses: judged.flatMap(({ text, codes, found }) =>
      codes.flatMap((code) => (found.includes(code) ? [] : [told(text, code)])),
    ),
  };
}

export const precision = ({ hits, falseAlarms }: Tally): number => hits / (hits + falseAlarms.length);
export const recall = ({ hits, misses }: Tally): number => hits / (hits + misses.length);

function blockOf(place: Place, text: string): Block {
  const body = paragraph(text);
  switch (place) {
    case 'step':
      return { type: 'prose', content: body, at: nowhere };
    case 'note':
      return { type: 'note', title: null, body, when: null, at: nowhere };
    case 'message':
      return { type: 'message', word: 'warning', hazard: [], body, when: null, at: nowhere };
    case 'prove':
      return { type: 'prove', needs: [], time: null, title: [], body, when: null, at: nowhere };
    case 'figure':
      return {
        type: 'figure',
        caption: body,
        src: null,
        path: null,
        alt: null,
        shows: null,
        crop: null,
        blur: [],
        zoom: null,
        marks: [],
        body: [],
        when: null,
        at: nowhere,
      };
  }
}

function paragraph(text: string): Prose {
  const at = { file: 'guide.md', start: 100, end: 100 + text.length };
  const words = { type: 'text', value: text, at } as const;
  return [{ type: 'element', tagName: 'p', properties: {}, children: [words], at }];
}
