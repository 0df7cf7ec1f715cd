import type { Span } from '../source/span.ts';
import type { Finding, Note } from './finding.ts';
import { placeOf, type RenderContext } from './place.ts';
import type { RuleCard } from './rule-card.ts';

/**
 * Prints findings as a SARIF 2.1.0 log (OASIS standard, 27 March 2020), which code hosts and editors read.
 * `rules` are the cards that the findings' codes are looked up in; only those that were raised are written.
 */
export function renderSarif(
  findings: readonly Finding[],
  rules: readonly RuleCard[],
  context: RenderContext,
  version: string,
): string {
  const raised = new Set(findings.map(({ code }) => code));
  const cards = rules.filter(({ code }) => raised.has(code));
  const log = {
    $schema: 'https://json.schemastore.org/sarif-2.1.0.json',
    version: '2.1.0',
    runs: [
      {
        tool: { driver: { name: 'Baybook', semanticVersion: version, rules: cards.map(sarifRule) } },
        columnKind: 'utf16CodeUnits',
        results: findings.map((finding) => sarifResult(finding, cards, context)),
      },
    ],
  };
  return JSON.stringify(log, null, 2);
}

function sarifRule(card: RuleCard) {
  return {
    id: card.code,
    shortDescription: { text: card.title },
    fullDescription: { text: card.why },
    defaultConfiguration: { level: card.severity },
  };
}

function sarifResult(finding: Finding, cards: readonly RuleCard[], context: RenderContext) {
  const ruleIndex = cards.findIndex(({ code }) => code === finding.code);
  const related = finding.notes.filter((note): note is Required<Note> => note.at !== undefined);
  const remarks = finding.notes.filter((note) => note.at === undefined).map((note) => note.message);
  return {
    ruleId: finding.code,
    ...(ruleIndex >= 0 ? { ruleIndex } : {}),
    level: finding.severity,
    message: { text: [finding.message, ...remarks].join('\n') },
    locations: [{ physicalLocation: location(finding.at, context) }],
    ...(related.length > 0
      ? {
          relatedLocations: related.map((note, id) => ({
            id,
            message: { text: note.message },
            physicalLocation: location(note.at, context),
          })),
        }
      : {}),
    ...(finding.suggestion ? { fixes: [fix(finding.suggestion, context)] } : {}),
  };
}

function fix({ at, text }: { readonly at: Span; readonly text: string }, context: RenderContext) {
  const { artifactLocation, region } = location(at, context);
  const replacement = {
    deletedRegion: region ?? { charOffset: 0, charLength: 0 },
    insertedContent: { text },
  };
  return {
    description: { text: text === '' ? 'take it out' : `write ${text}` },
    artifactChanges: [{ artifactLocation, replacements: [replacement] }],
  };
}

function location(at: Span, { sources, prefix }: RenderContext) {
  const place = placeOf(at, sources);
  const uri = (prefix + at.file).split('/').map(encodeURIComponent).join('/');
  return {
    artifactLocation: { uri },
    ...(place
      ? {
          region: {
            startLine: place.start.line,
            startColumn: place.start.column,
            endLine: place.end.line,
            endColumn: place.end.column,
          },
        }
      : {}),
  };
}
