import { spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { pageUnderPen } from '../../preview/site-under-pen.ts';
import { startPreview } from '../../preview/start.ts';
import { type ExitCode, type Io, UsageError } from '../io.ts';
import { workOn } from '../work.ts';
import { workspaceFolder } from '../workspace.ts';

interface PreviewOptions {
  readonly guides: string;
  readonly port?: number;
  readonly open?: boolean;
}

/** Where a preview looks for a port: the first, and how many after it. */
const ports = { first: 4180, tries: 10 } as const;

/** `baybook preview`: shows the guides in a browser while they are written, until it is stopped. */
export async function preview(
  name: string | undefined,
  options: PreviewOptions,
  io: Io,
  stopped: Promise<void> = interrupted(),
): Promise<ExitCode> {
  const { root } = await workspaceFolder(options.guides, io);
  const { work, done } = workOn(root, io);
  const trouble = (line: string) => io.err(`${line}\n`);
  const started = await onFreePort(options.port, (port) => startPreview(work, root, port, trouble));
  const page = name === undefined ? '' : pageUnderPen(fileOf(name, root));
  const address = `http://localhost:${started.port}/${page}`;
  io.out(`${address} follows what is saved in ${options.guides}; Ctrl+C ends it\n`);
  if (options.open) openBrowser(address, trouble);
  await stopped;
  await started.close();
  done();
  return 0;
}

/** The file of what is shown first: a guide, else a visit of that name, also by its path. */
function fileOf(name: string, root: string): string {
  const guide = `${name.replace(/\/guide\.md$/, '')}/guide.md`;
  const visit = `visits/${name.replace(/^visits\//, '').replace(/\.md$/, '')}.md`;
  return !existsSync(join(root, guide)) && existsSync(join(root, visit)) ? visit : guide;
}

/** Starts on the port that is asked for, or on the first that is free. */
async function onFreePort<T>(asked: number | undefined, start: (port: number) => Promise<T>): Promise<T> {
  const last = ports.first + ports.tries - 1;
  for (let port = asked ?? ports.first; ; port += 1) {
    try {
      return await start(port);
    } catch (error) {
      if (!(error instanceof Error) || !('code' in error) || error.code !== 'EADDRINUSE') throw error;
      if (asked !== undefined)
        throw new UsageError(`port ${port} is in use, maybe by another preview; --port names another`);
      if (port === last)
        throw new UsageError(`ports ${ports.first} to ${last} are in use; --port names another`);
    }
  }
}

function openBrowser(address: string, trouble: (line: string) => void): void {
  const [command, args] =
    process.platform === 'darwin'
      ? (['open', [address]] as const)
      : process.platform === 'win32'
        ? (['cmd', ['/c', 'start', '', address]] as const)
        : (['xdg-open', [address]] as const);
  const child = spawn(command, args, { stdio: 'ignore', detached: true });
  child.on('error', () => trouble(`no browser could be opened by "${command}"; open ${address} by hand`));
  child.unref();
}

function interrupted(): Promise<void> {
  return new Promise((stop) => {
    process.once('SIGINT', () => stop());
    process.once('SIGTERM', () => stop());
  });
}
