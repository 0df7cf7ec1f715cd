/** What the preview serves of its own stands under a name that no file of a site has. */
const ownFolder = '/~preview/';

/** The address of a file of the preview itself. */
export function hostedFile(name: 'follow.js' | 'panel.css' | 'news' | 'bench.js' | 'bench.css'): string {
  return ownFolder + name;
}

/** Where the bench for pictures is asked and told. */
export const benchFolder = `${ownFolder}bench/`;

/** The bench for the pictures of a guide. */
export function benchOf(guide: string): string {
  return `${benchFolder}?guide=${encodeURIComponent(guide)}`;
}
