import { benchOf, hostedFile } from './paths.ts';
import { type News, pageUnderPen } from './site-under-pen.ts';

/** A page of the site with what lets it follow the pen; the page itself stays as it will be published. */
export function followed(html: string, path: string, { edition }: News): string {
  const guide = /^guides\/([^/]+)\//.exec(path)?.[1];
  const bench = guide === undefined ? '' : ` data-bench="${attribute(benchOf(decodeURIComponent(guide)))}"`;
  const script = `<script src="${hostedFile('follow.js')}" data-page="${attribute(path)}" data-edition="${edition ?? ''}"${bench} defer></script>\n`;
  return html.replace('</head>', () => `${script}</head>`);
}

/** What stands where a guide has had no good page yet: nothing but what has to be mended. */
export function unmade(path: string, news: News): string {
  const body =
    '<h1>Not yet a page</h1>\n<p>This guide has no good page yet. It shows here as soon as its errors are mended.</p>';
  return followed(shell('Not yet a page', body), path, news);
}

/**
 * The first page of the preview: the guides of the workspace, and its visits, each under its name.
 *
 * @param pages their pages, from the site's root
 */
export function listOfPages(pages: readonly string[]): string {
  const list = (title: string, folder: string) => {
    const rows = pages.flatMap((page) => {
      const [shelf, id = ''] = page.split('/');
      if (shelf !== folder) return [];
      const pictures = shelf === 'guides' ? ` · <a href="${attribute(benchOf(id))}">its pictures</a>` : '';
      return [`<li><a href="/${attribute(page)}">${attribute(id)}</a>${pictures}</li>`];
    });
    return rows.length === 0 ? '' : `<h1>${title}</h1>\n<ul>\n${rows.join('\n')}\n</ul>\n`;
  };
  const body = `${list('Guides', 'guides')}${list('Visits', 'visits')}<p><a href="/index.html">The site as it will be published</a> (makes every guide first)</p>`;
  return shell('Preview', body);
}

/** The page of the bench; its script makes all that stands on it. */
export function benchPage(guide: string): string {
  const script = `<script src="${hostedFile('bench.js')}" data-guide="${attribute(guide)}" defer></script>\n`;
  const style = `<link rel="stylesheet" href="${hostedFile('bench.css')}">\n`;
  const body = `<h1>Pictures of ${attribute(guide)}</h1>\n<p><a href="/${attribute(pageUnderPen(`${guide}/guide.md`))}">The page of the guide</a></p>`;
  return shell(`Pictures of ${attribute(guide)}`, body).replace('</head>', () => `${style}${script}</head>`);
}

function shell(title: string, body: string): string {
  return `<!doctype html>\n<html lang="en">\n<head>\n<meta charset="utf-8">\n<title>${title}</title>\n<meta name="viewport" content="width=device-width">\n<link rel="stylesheet" href="${hostedFile('panel.css')}">\n</head>\n<body>\n<main>\n${body}\n</main>\n</body>\n</html>\n`;
}

function attribute(text: string): string {
  return text.replace(/[&<>"]/g, (sign) => `&#${sign.codePointAt(0)};`);
}
