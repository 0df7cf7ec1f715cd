/**
 * Where the site may stand: hosts that cannot be (RFC 6761). Both schemes, since `https:host/a.png` leads to a path of
 * the site itself where that has the same scheme, and to the host where it has another (URL Standard, 4.4).
 */
const sites = ['https://site.invalid/a/b/page.html', 'http://site.invalid/a/b/page.html'].map(
  (page) => new URL(page),
);

/** Whether an address asks for a file of the site, for what stands in the address itself (`data:`), or leaves the site. */
export function hostOf(address: string): 'site' | 'data' | 'elsewhere' {
  const hosts = sites.map((site) => {
    if (!URL.canParse(address, site.href)) return 'elsewhere';
    const url = new URL(address, site);
    if (url.protocol === 'data:') return 'data';
    return url.origin === site.origin ? 'site' : 'elsewhere';
  });
  return hosts.find((host) => host !== 'site') ?? 'site';
}
