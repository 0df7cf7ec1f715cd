/**
 * Loads another script of the site, which lies beside that of the page, a guide's or the first one; once, however
 * often it is asked for.
 */
export function loadBeside(name: string): Promise<void> {
  const known = asked.get(name);
  if (known) return known;
  const here = [...document.scripts].find(({ src }) => /\/(?:guide|search)\.js$/.test(src));
  const loading = new Promise<void>((resolve, reject) => {
    const script = document.createElement('script');
    script.src = here ? here.src.replace(/[^/]+$/, `${name}.js`) : '';
    script.addEventListener('load', () => resolve());
    script.addEventListener('error', () => reject(new Error(`${name}.js cannot be loaded`)));
    document.head.append(script);
  });
  asked.set(name, loading);
  // What could not be had now may be there the next time.
  loading.catch(() => asked.delete(name));
  return loading;
}

/** Adds a style sheet of the site, for what is shown only when it is asked for. */
export function loadStyle(name: string): void {
  const here = [...document.querySelectorAll<HTMLLinkElement>('link[rel=stylesheet]')].find(({ href }) =>
    href.endsWith('/page.css'),
  );
  const link = document.createElement('link');
  link.rel = 'stylesheet';
  link.href = here ? here.href.replace(/[^/]+$/, `${name}.css`) : '';
  document.head.append(link);
}

const asked = new Map<string, Promise<void>>();
