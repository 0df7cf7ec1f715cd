/** What the photographs of a phone come in, and are shown in by browsers. */
const endings: { readonly [ending: string]: string } = {
  jpg: 'jpg',
  jpeg: 'jpg',
  png: 'png',
  webp: 'webp',
  svg: 'svg',
};

/**
 * A file's name as it is kept beside a guide: small letters, digits and hyphens. `null` where its ending says that it is
 * no picture that a guide shows.
 */
export function cleanName(name: string): string | null {
  const [, stem = '', ending = ''] = /^(.*)\.([A-Za-z]+)$/.exec(name.replace(/^.*[\\/]/, '')) ?? [];
  const kept = endings[ending.toLowerCase()];
  if (kept === undefined) return null;
  const plain = stem
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '');
  return `${plain === '' ? 'picture' : plain}.${kept}`;
}
