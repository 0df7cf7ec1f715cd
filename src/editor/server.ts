import { pathToFileURL } from 'node:url';
import {
  type CodeAction,
  CodeActionKind,
  CompletionItemKind,
  type Connection,
  type Diagnostic,
  DiagnosticSeverity,
  type DocumentSymbol,
  ErrorCodes,
  type Location,
  ResponseError,
  SymbolKind,
  TextDocumentSyncKind,
  TextDocuments,
  type TextEdit,
} from 'vscode-languageserver/node.js';
import { type Position, type Range, TextDocument } from 'vscode-languageserver-textdocument';
import type { Finding } from '../diagnostics/finding.ts';
import type { SourceFile } from '../source/source-file.ts';
import { lineColumn } from '../source/source-file.ts';
import type { Span } from '../source/span.ts';
import { offersAt } from './complete.ts';
import type { EditorDesk } from './desk.ts';
import { definitionsOf, nameAt, placesOf, renameRefused } from './names-of-workspace.ts';
import { foldsOf, type OutlineEntry, outlineOf } from './outline.ts';
import { toldAt } from './tell.ts';

/** Milliseconds without a key before what is typed is checked. */
const PAUSE = 150;

/**
 * Serves a workspace to an editor by the Language Server Protocol, until the editor leaves.
 *
 * @param root the folder of the workspace
 */
export function serveEditor(connection: Connection, desk: EditorDesk, root: string): Promise<void> {
  const documents = new TextDocuments(TextDocument);
  const base = pathToFileURL(root).href.replace(/\/?$/, '/');
  const uriOf = (path: string) => base + path.split('/').map(encodeURIComponent).join('/');
  const pathOf = (uri: string): string | null => {
    // Editors write one address in several ways; all are read alike.
    const [plain, own] = [uri, base].map((one) => decodeURIComponent(one));
    return plain?.startsWith(own ?? '') ? plain.slice(own?.length) : null;
  };
  const range = ({ file, start, end }: Span): Range => {
    const source = desk.source(file);
    return { start: positionIn(source, start), end: positionIn(source, end) };
  };
  const locations = (spans: readonly Span[]): Location[] =>
    spans.map((span) => ({ uri: uriOf(span.file), range: range(span) }));

  // One thing after another: what an editor asks is answered from what it has typed until then.
  let queue: Promise<unknown> = Promise.resolve();
  const inTurn = <T>(work: () => Promise<T> | T): Promise<T> => {
    const result = queue.then(work);
    queue = result.catch(() => undefined);
    return result;
  };
  const typed = new Map<string, string | null>();
  const takeIn = () => {
    if (typed.size > 0) desk.typed(new Map(typed));
    typed.clear();
  };

  let shown: ReadonlySet<string> = new Set();
  let suggested: readonly Finding[] = [];
  const tell = async (): Promise<void> => {
    takeIn();
    const findings = await desk.findings();
    suggested = findings.filter(({ suggestion }) => suggestion);
    const byFile = new Map<string, Finding[]>();
    for (const finding of findings)
      byFile.set(finding.at.file, [...(byFile.get(finding.at.file) ?? []), finding]);
    for (const path of new Set([...shown, ...byFile.keys()])) {
      const diagnostics = (byFile.get(path) ?? []).map((finding) => diagnosticOf(finding, range, uriOf));
      await connection.sendDiagnostics({ uri: uriOf(path), diagnostics });
    }
    shown = new Set(byFile.keys());
  };
  let timer: NodeJS.Timeout | null = null;
  const soon = () => {
    if (timer) clearTimeout(timer);
    timer = setTimeout(() => {
      inTurn(tell).catch((error: unknown) => connection.console.error(String(error)));
    }, PAUSE);
  };
  documents.onDidChangeContent(({ document }) => {
    const path = pathOf(document.uri);
    if (path === null) return;
    typed.set(path, document.getText());
    soon();
  });
  documents.onDidClose(({ document }) => {
    const path = pathOf(document.uri);
    if (path === null) return;
    typed.set(path, null);
    soon();
  });
  connection.onDidChangeWatchedFiles(() => {
    desk.changedOnDisk();
    soon();
  });
  documents.onDidSave(() => soon());

  /** Answers about a place of a file of the workspace; nothing for any other file. */
  const at = <T>(
    {
      textDocument,
      position,
    }: { readonly textDocument: { readonly uri: string }; readonly position: Position },
    none: T,
    answer: (path: string, offset: number) => Promise<T> | T,
  ): Promise<T> =>
    inTurn(async () => {
      takeIn();
      const path = pathOf(textDocument.uri);
      const source = path === null ? null : desk.source(path);
      return path === null || !source ? none : answer(path, offsetIn(source, position));
    });
  const about = <T>(uri: string, none: T, answer: (source: SourceFile) => T): Promise<T> =>
    inTurn(() => {
      takeIn();
      const path = pathOf(uri);
      const source = path === null ? null : desk.source(path);
      return source ? answer(source) : none;
    });

  connection.onInitialize(() => ({
    capabilities: {
      textDocumentSync: TextDocumentSyncKind.Incremental,
      completionProvider: { triggerCharacters: [':', '[', '{', '=', '"', ' '] },
      hoverProvider: true,
      definitionProvider: true,
      referencesProvider: true,
      renameProvider: true,
      documentSymbolProvider: true,
      codeActionProvider: { codeActionKinds: [CodeActionKind.QuickFix] },
      foldingRangeProvider: true,
    },
    serverInfo: { name: 'baybook' },
  }));
  connection.onInitialized(soon);
  connection.onCompletion((asked) =>
    at(asked, [], async (path, offset) => {
      const source = desk.source(path);
      return offersAt(path, offset, desk, await desk.workspace()).map(
        ({ label, detail, kind, text, typed: taken }) => ({
          label,
          documentation: detail,
          kind: kinds[kind],
          textEdit: {
            range: { start: positionIn(source, offset - taken), end: positionIn(source, offset) },
            newText: text,
          },
        }),
      );
    }),
  );
  connection.onHover((asked) =>
    at(asked, null, async (path, offset) => {
      const value = toldAt(path, offset, desk, await desk.workspace());
      return value === null ? null : { contents: { kind: 'markdown' as const, value } };
    }),
  );
  connection.onDefinition((asked) =>
    at<Location[]>(asked, [], async (path, offset) => {
      const name = nameAt(desk, path, offset);
      return name ? locations(definitionsOf(name, desk, await desk.workspace())) : [];
    }),
  );
  connection.onReferences((asked) =>
    at<Location[]>(asked, [], async (path, offset) => {
      const name = nameAt(desk, path, offset);
      return name ? locations(placesOf(name, desk, await desk.workspace())) : [];
    }),
  );
  connection.onRenameRequest((asked) =>
    at(asked, null, async (path, offset) => {
      const name = nameAt(desk, path, offset);
      if (!name) throw new ResponseError(ErrorCodes.InvalidRequest, 'there is no name here');
      const workspace = await desk.workspace();
      const why = renameRefused(asked.newName, name, desk, workspace);
      if (why !== null) throw new ResponseError(ErrorCodes.InvalidRequest, why);
      const changes: { [uri: string]: TextEdit[] } = {};
      for (const span of placesOf(name, desk, workspace)) {
        const edits = changes[uriOf(span.file)] ?? [];
        edits.push({ range: range(span), newText: asked.newName });
        changes[uriOf(span.file)] = edits;
      }
      return { changes };
    }),
  );
  connection.onDocumentSymbol(({ textDocument }) =>
    about<DocumentSymbol[]>(textDocument.uri, [], (source) =>
      source.path.endsWith('.md') ? outlineOf(source).map((entry) => symbolOf(entry, range)) : [],
    ),
  );
  connection.onFoldingRanges(({ textDocument }) =>
    about(textDocument.uri, [], (source) =>
      (source.path.endsWith('.md') ? foldsOf(source) : []).flatMap((span) => {
        const startLine = positionIn(source, span.start).line;
        const endLine = positionIn(
          source,
          span.start + source.text.slice(span.start, span.end).trimEnd().length,
        ).line;
        return endLine > startLine ? [{ startLine, endLine }] : [];
      }),
    ),
  );
  connection.onCodeAction(({ textDocument, context, range: asked }) =>
    about<CodeAction[]>(textDocument.uri, [], (source) =>
      suggested.flatMap(({ at: place, code, suggestion }) => {
        if (!suggestion || place.file !== source.path) return [];
        const own = range(place);
        const here = own.start.line <= asked.end.line && own.end.line >= asked.start.line;
        if (!here) return [];
        const what = suggestion.text === '' ? 'Take it out' : `Write ${suggestion.text}`;
        return [
          {
            title: what,
            kind: CodeActionKind.QuickFix,
            diagnostics: context.diagnostics.filter((one) => one.code === code),
            edit: {
              changes: {
                [uriOf(suggestion.at.file)]: [{ range: range(suggestion.at), newText: suggestion.text }],
              },
            },
          },
        ];
      }),
    ),
  );
  documents.listen(connection);
  connection.listen();
  return new Promise((left) => {
    connection.onExit(() => {
      if (timer) clearTimeout(timer);
      left();
    });
  });
}

const kinds = {
  directive: CompletionItemKind.Keyword,
  attribute: CompletionItemKind.Property,
  value: CompletionItemKind.EnumMember,
  name: CompletionItemKind.Reference,
} as const;

const symbols = {
  section: SymbolKind.Namespace,
  step: SymbolKind.Method,
  template: SymbolKind.Object,
} as const;

function diagnosticOf(
  { at, severity, code, message, notes, suggestion }: Finding,
  range: (at: Span) => Range,
  uriOf: (path: string) => string,
): Diagnostic {
  const here = notes.flatMap((note) => (note.at ? [] : [note.message]));
  const mend = suggestion && suggestion.text !== '' ? [`likely mend: write ${suggestion.text}`] : [];
  return {
    range: range(at),
    severity: severity === 'error' ? DiagnosticSeverity.Error : DiagnosticSeverity.Warning,
    code,
    source: 'baybook',
    message: [message, ...here, ...mend].join('\n'),
    relatedInformation: notes.flatMap((note) =>
      note.at
        ? [{ message: note.message, location: { uri: uriOf(note.at.file), range: range(note.at) } }]
        : [],
    ),
  };
}

function symbolOf(
  { title, kind, at, opens, within }: OutlineEntry,
  range: (at: Span) => Range,
): DocumentSymbol {
  return {
    name: title,
    kind: symbols[kind],
    range: range(at),
    selectionRange: range(opens),
    children: within.map((one) => symbolOf(one, range)),
  };
}

/** The protocol counts lines and UTF-16 units from 0, and ends lines as a source does. */
function positionIn(source: SourceFile | null, offset: number): Position {
  if (!source) return { line: 0, character: 0 };
  const { line, column } = lineColumn(source, offset);
  return { line: line - 1, character: column - 1 };
}

function offsetIn({ text, lineStarts }: SourceFile, { line, character }: Position): number {
  const start = lineStarts[line] ?? text.length;
  const end = lineStarts[line + 1] ?? text.length;
  return Math.min(start + character, end);
}
