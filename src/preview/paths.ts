/** What the preview serves of its own stands under a name that no file of a site has. */
const ownFolder = '/~preview/';

/** The address of a file of the preview itself. */
export function hostedFile(name: 'follow.js' | 'panel.css' | 'news'): string {
  return ownFolder + name;
}
