/** The page of a tool or of protective equipment, from the site's root. */
export function toolPath(id: string): string {
  return `tools/${id}/index.html`;
}

/** The page of a kind of fastener, from the site's root. */
export function fastenerTypePath(id: string): string {
  return `fasteners/${id}/index.html`;
}

/** The page of all terms, from the site's root. */
export const glossaryPath = 'glossary/index.html';

/** The entry of a term on that page. */
export function termPath({ id }: { readonly id: string }): string {
  return `${glossaryPath}#${id}`;
}

/** The folder of the handbook, from the site's root. */
export const handbookFolder = 'handbook/';

/** The page that opens the records of vehicles, from the site's root. */
export const recordsPath = 'records.html';
