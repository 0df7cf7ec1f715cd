import { createConnection, StreamMessageReader, StreamMessageWriter } from 'vscode-languageserver/node.js';
import { editorDesk } from '../../editor/desk.ts';
import { serveEditor } from '../../editor/server.ts';
import { ownIdentity } from '../../site/identity.ts';
import type { ExitCode, Io } from '../io.ts';
import { workOn } from '../work.ts';
import { workspaceFolder } from '../workspace.ts';

/** `baybook language-server`: speaks with an editor over standard input and output, until the editor leaves. */
export async function languageServer(
  options: { readonly guides: string },
  io: Io,
  input: NodeJS.ReadableStream = process.stdin,
  output: NodeJS.WritableStream = process.stdout,
): Promise<ExitCode> {
  const { root } = await workspaceFolder(options.guides, io);
  const { work, done } = workOn(root, io);
  const connection = createConnection(new StreamMessageReader(input), new StreamMessageWriter(output));
  await serveEditor(connection, editorDesk(work, ownIdentity()), root);
  done();
  return 0;
}
