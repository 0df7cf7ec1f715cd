import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { parse } from 'parse5';
import { beforeAll, describe, expect, it } from 'vitest';
import { demoSite } from './demo-site.ts';

/** An element as parse5 reads it. */
interface Read {
  readonly nodeName: string;
  readonly attrs?: readonly { readonly name: string; readonly value: string }[];
  readonly childNodes?: readonly Read[];
  /** Of a text. */
  readonly value?: string;
}

const all = (from: Read): readonly Read[] => [from, ...(from.childNodes ?? []).flatMap(all)];
const of = (from: Read, name: string) => from.attrs?.find((one) => one.name === name)?.value ?? '';
const hasClass = (name: string) => (one: Read) => of(one, 'class').split(' ').includes(name);
const hrefs = (from: Read, tag: string) =>
  all(from).flatMap((one) => (one.nodeName === tag ? [of(one, 'href').slice(1)] : []));

let pages: readonly (readonly [string, readonly Read[]])[] = [];
let platforms: readonly (readonly [string, readonly Read[]])[] = [];

beforeAll(async () => {
  const site = await demoSite();
  const found: [string, readonly Read[]][] = [];
  for (const folder of ['guides', 'visits', 'platforms']) {
    for (const name of await readdir(join(site, folder))) {
      const html = await readFile(join(site, folder, name, 'index.html'), 'utf8');
      found.push([`${folder}/${name}`, all(parse(html) as Read)]);
    }
  }
  platforms = found.filter(([page]) => page.startsWith('platforms/'));
  pages = found.filter(([page]) => !page.startsWith('platforms/'));
});

describe('the page of a platform', () => {
  it('names each zone of its drawing, and leads from there to every step of every guide on it', () => {
    const led = new Set<string>();
    for (const [page, elements] of platforms) {
      const drawing = elements.find(hasClass('zones'));
      if (!drawing) throw new Error(`${page} has no drawing`);
      const lists = elements.filter(hasClass('zone'));
      const ids = lists.map((one) => of(one, 'id'));
      const zones = hrefs(drawing, 'a');
      expect(zones.length).toBeGreaterThan(2);
      expect(zones.filter((id) => !ids.includes(id))).toEqual([]);
      for (const href of lists.flatMap((one) => all(one)).map((one) => of(one, 'href'))) led.add(href);
    }
    const guides = pages.filter(([page]) => page.startsWith('guides/'));
    expect(guides.length).toBeGreaterThan(7);
    for (const [page, elements] of guides) {
      const steps = elements.filter(hasClass('step')).map((one) => of(one, 'id'));
      expect(
        steps.filter((id) => !led.has(`../../${page}/index.html#${id}`)),
        page,
      ).toEqual([]);
    }
  });

  it('tells of a part that is cut and not handled which guide cuts it', () => {
    const [, boat] = platforms.find(([page]) => page.endsWith('teal-skerry')) ?? ['', []];
    const table = boat.filter(hasClass('parts'));
    expect(table.flatMap((one) => hrefs(one, 'a'))).toContain(
      './../guides/depth-transducer/index.html#housing-hole',
    );
  });
});

describe('the drawing of the vehicle', () => {
  it('leads to every step of every guide and visit of the demo, by links alone', () => {
    for (const [page, elements] of pages) {
      const drawing = elements.find(hasClass('vehicle'));
      if (!drawing) throw new Error(`${page} has no drawing`);
      const lists = elements.filter(hasClass('zone'));
      // What is done off the vehicle stands beside the drawing, under the same heading.
      const led = new Set([...hrefs(drawing, 'a'), 'zone_off']);
      const reached = lists.filter((one) => led.has(of(one, 'id'))).flatMap((one) => hrefs(one, 'a'));
      const steps = elements.filter(hasClass('step')).map((one) => of(one, 'id'));
      expect(steps.length, page).toBeGreaterThan(5);
      expect(
        steps.filter((id) => !reached.includes(id)),
        page,
      ).toEqual([]);
    }
  });

  it('stands once on a page, and each step lights up shapes that are in it', () => {
    for (const [page, elements] of pages) {
      const ids = elements.map((one) => of(one, 'id')).filter((id) => id !== '');
      expect(new Set(ids).size, page).toBe(ids.length);
      const places = elements.filter(hasClass('place'));
      expect(places.length, page).toBe(elements.filter(hasClass('step')).length);
      const asked = places.flatMap((one) => [of(one, 'href').slice(1), ...hrefs(one, 'use')]);
      expect(
        asked.filter((id) => !ids.includes(id)),
        page,
      ).toEqual([]);
      expect(elements.filter((one) => one.nodeName === 'image').length, page).toBe(1);
    }
  });
});

describe('the intake', () => {
  it('goes zone by zone, and says in which each part lies', () => {
    const asked = new Map(pages.map(([page, elements]) => [page, intakeOf(elements)]));
    for (const [page, names] of asked) {
      const zones = names.map((name) => name.split(': ')[0] ?? '');
      // Each zone is gone to once.
      expect(zones.filter((zone, at) => zone !== zones[at - 1]).length, page).toBe(new Set(zones).size);
    }
    expect(asked.get('guides/roof-vent')).toEqual([
      'Load space: headlining',
      'Load space: grab handle',
      'Roof: roof panel',
      'Roof: roof frame round the opening',
    ]);
  });
});

/** What a page asks at the intake, by the data of its script. */
function intakeOf(elements: readonly Read[]): readonly string[] {
  const text = elements.find((one) => of(one, 'id') === 'bay_data')?.childNodes?.[0]?.value ?? '{}';
  const { intake }: { readonly intake: readonly { readonly name: string }[] } = JSON.parse(text);
  return intake.map(({ name }) => name);
}
