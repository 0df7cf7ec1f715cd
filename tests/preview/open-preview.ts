import { request } from 'node:http';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import type { News } from '../../src/preview/site-under-pen.ts';
import { type Preview, startPreview } from '../../src/preview/start.ts';
import { diskFiles } from '../../src/shop/files/disk-files.ts';
import { type Bench, bench, repository } from '../driver.ts';
import { pictureStore } from '../picture-store.ts';

/** What a preview answers. */
export interface Served {
  readonly status: number;
  readonly type: string;
  readonly body: string;
}

/** A preview of a workspace in a temporary folder. */
export interface PreviewBench extends Bench {
  readonly preview: Preview;
  readonly troubles: string[];
  /** Asks for an address as it stands, with a Host header of one's choice. */
  readonly ask: (path: string, host?: string, method?: string) => Promise<Served>;
  /** Listens to what is told of a page; `next` waits for news that fit. */
  readonly listen: (
    page: string,
  ) => Promise<{ readonly next: (fits: (news: News) => boolean) => Promise<News> }>;
}

/** Finished work of this file's tests: names are hashes of contents, so no test sees another's. */
const store = await pictureStore();

/** Opens a preview of the fixture guide, or of another workspace. */
export async function openPreview(
  workspace: Parameters<typeof bench>[0] = join(repository, 'tests/cases/lamp-cradle-fixture'),
): Promise<PreviewBench> {
  const made = await bench(workspace);
  const troubles: string[] = [];
  const root = join(made.folder, 'guides');
  const work = { files: diskFiles(root), store, openCrew: async () => null };
  const preview = await startPreview(work, root, 0, (line) => troubles.push(line));
  onTestFinished(() => preview.close());
  const { port } = preview;
  return {
    ...made,
    preview,
    troubles,
    ask: (path, host = `localhost:${port}`, method = 'GET') => asked(port, path, host, method),
    listen: (page) => listening(port, page),
  };
}

function asked(port: number, path: string, host: string, method: string): Promise<Served> {
  return new Promise((answered, failed) => {
    const asking = request({ host: '127.0.0.1', port, path, method, headers: { host } }, (response) => {
      let body = '';
      response.on('data', (chunk) => {
        body += chunk;
      });
      response.on('end', () =>
        answered({ status: response.statusCode ?? 0, type: response.headers['content-type'] ?? '', body }),
      );
    });
    asking.on('error', failed);
    asking.end();
  });
}

function listening(port: number, page: string) {
  const heard: News[] = [];
  let wake = () => {};
  const host = `localhost:${port}`;
  const path = `/~preview/news?page=${encodeURIComponent(page)}`;
  return new Promise<{ readonly next: (fits: (news: News) => boolean) => Promise<News> }>((ready, failed) => {
    const asking = request({ host: '127.0.0.1', port, path, headers: { host } }, (response) => {
      let text = '';
      response.on('data', (chunk) => {
        text += chunk;
        for (let end = text.indexOf('\n\n'); end >= 0; end = text.indexOf('\n\n')) {
          heard.push(JSON.parse(text.slice('data: '.length, end)));
          text = text.slice(end + 2);
        }
        wake();
      });
      ready({
        next: async (fits) => {
          for (;;) {
            const found = heard.findIndex(fits);
            if (found >= 0) return heard.splice(0, found + 1)[found] as News;
            await new Promise<void>((woken) => {
              wake = woken;
            });
          }
        },
      });
    });
    asking.on('error', (error) => failed(error));
    asking.end();
    onTestFinished(() => void asking.destroy());
  });
}
