import { join } from 'node:path';
import { PassThrough } from 'node:stream';
import { pathToFileURL } from 'node:url';
import { expect, onTestFinished, vi } from 'vitest';
import {
  createConnection,
  createProtocolConnection,
  type Diagnostic,
  PublishDiagnosticsNotification,
  StreamMessageReader,
  StreamMessageWriter,
} from 'vscode-languageserver/node.js';
import { editorDesk } from '../../src/editor/desk.ts';
import { serveEditor } from '../../src/editor/server.ts';
import { diskFiles } from '../../src/shop/files/disk-files.ts';
import { memoryStore } from '../../src/store/store.ts';
import { type Bench, bench } from '../driver.ts';

/** Finished work of these tests: names are hashes of contents, so no test sees another's. */
const store = memoryStore();

/** A workspace with an editor that has just opened it. */
export interface Talk extends Bench {
  readonly uri: (path: string) => string;
  readonly ask: (method: string, params: object) => Promise<unknown>;
  readonly say: (method: string, params: object) => Promise<void>;
  /** What stands against each file by now, once what fits has come. */
  readonly until: (fits: (shown: ReadonlyMap<string, readonly Diagnostic[]>) => boolean) => Promise<void>;
  readonly shown: ReadonlyMap<string, readonly Diagnostic[]>;
}

/** Opens a workspace of files, or of a folder to copy, in the server, and speaks the protocol with it. */
export async function talk(workspace: Parameters<typeof bench>[0]): Promise<Talk> {
  const made = await bench(workspace);
  const root = join(made.folder, 'guides');
  const [there, back] = [new PassThrough(), new PassThrough()];
  const desk = editorDesk({ files: diskFiles(root), store, openCrew: async () => null }, 'test');
  const served = createConnection(new StreamMessageReader(there), new StreamMessageWriter(back));
  const left = serveEditor(served, desk, root);
  const client = createProtocolConnection(new StreamMessageReader(back), new StreamMessageWriter(there));
  const base = pathToFileURL(root).href;
  const shown = new Map<string, readonly Diagnostic[]>();
  let wake = () => {};
  client.onNotification(PublishDiagnosticsNotification.type, ({ uri, diagnostics }) => {
    shown.set(decodeURIComponent(uri.slice(base.length + 1)), diagnostics);
    wake();
  });
  client.listen();
  await client.sendRequest('initialize', { processId: null, rootUri: base, capabilities: {} });
  await client.sendNotification('initialized', {});
  onTestFinished(async () => {
    await client.sendRequest('shutdown');
    // The server ends its process when the editor leaves; here that is the process of the tests.
    const exit = vi.spyOn(process, 'exit').mockImplementation((() => undefined) as never);
    await client.sendNotification('exit');
    await left;
    expect(exit).toHaveBeenCalledWith(0);
    exit.mockRestore();
    client.dispose();
  });
  return {
    ...made,
    uri: (path) => `${base}/${path}`,
    ask: (method, params) => client.sendRequest(method, params),
    say: (method, params) => client.sendNotification(method, params),
    shown,
    until: async (fits) => {
      while (!fits(shown)) {
        await new Promise<void>((woken) => {
          wake = woken;
        });
      }
    },
  };
}
