import { describe, expect, it } from 'vitest';
import { shortFingerprint } from '../../src/pages/frame/identity.ts';
import { htmlFaults } from '../html-faults.ts';
import { crib, fastenerTypes, guide } from '../site/reference-shop.ts';
import * as fixture from './fixture.ts';
import { guideHtml, indexHtml, platformHtml } from './render.ts';

describe('every page', () => {
  it('is valid HTML (html-validate, recommended and a11y)', async () => {
    expect(await htmlFaults(indexHtml())).toEqual([]);
    expect(await htmlFaults(platformHtml())).toEqual([]);
    expect(await htmlFaults(guideHtml())).toEqual([]);
  });

  it('prints a hostile title as text', () => {
    const hostile = `</title><script>alert("x")</script><img src=x onerror='y'>{{ 7 | times: 7 }}`;
    for (const html of [
      guideHtml(fixture.titled(hostile)),
      indexHtml(fixture.titled(hostile)),
      platformHtml(fixture.titled(hostile)),
    ]) {
      expect(html).toContain('&lt;script&gt;');
      expect(html).toContain('{{ 7 | times: 7 }}');
      expect(html).not.toMatch(/<script>|<img src=x|<\/title><script/);
    }
  });

  it('lets nothing of an author end the table that ships with it', () => {
    const fog = fixture.guide.builds.options.map((option) => ({ ...option, id: '</script><b>' }));
    const html = guideHtml(
      { ...fixture.guide, builds: { ...fixture.guide.builds, options: fog } },
      {
        ...fixture.job,
        decidingOptions: ['</script><b>'],
      },
    );
    expect(html).toContain('\\u003c/script>');
    expect(html.match(/<\/script>/g)).toHaveLength(html.match(/<script\b/g)?.length ?? 0);
  });

  it('forbids every other host, inline scripts and inline styles', () => {
    const policy = /http-equiv="Content-Security-Policy" content="([^"]*)"/.exec(guideHtml())?.[1];
    expect(policy).toContain("default-src 'none'");
    expect(policy).not.toMatch(/unsafe|https?:|\*/);
    expect(guideHtml()).not.toMatch(/ style="|<style| on[a-z]+="/);
  });

  it('links only what lies beside it', () => {
    for (const html of [guideHtml(), indexHtml(), platformHtml()]) {
      const addresses = [...html.matchAll(/ (?:href|src)="([^"]*)"/g)].map((match) => match[1] ?? '');
      expect(addresses.length).toBeGreaterThan(4);
      expect(addresses.filter((address) => /^(?:[a-z]+:|\/)/.test(address) || address.endsWith('/'))).toEqual(
        [],
      );
    }
  });
});

describe('the page of a guide', () => {
  const html = guideHtml();

  it('shows revision, date and fingerprint on top and at the foot', () => {
    const [top = '', foot = ''] = [
      html.slice(0, html.indexOf('</h1>') + 900),
      html.slice(html.indexOf('<footer')),
    ];
    const print = shortFingerprint(fixture.job.fingerprint);
    for (const words of ['2\u00a0October 2026', print, 'QL-220']) {
      expect(top).toContain(words);
      expect(foot).toContain(words);
    }
  });

  it('names its edition in the title that a browser shows, keeps and prints', () => {
    const print = shortFingerprint(fixture.job.fingerprint);
    expect(html).toContain(
      `<title>Auxiliary lamp cradle, behind the front bumper cover (revision 3, ${print})</title>`,
    );
  });

  it('leads from a row to the page of the tool or the kind of fastener, where the shop has one', () => {
    const shop = { ...fixture.shop, crib, fastenerTypes };
    const listed = guideHtml(guide, fixture.job, shop);
    expect(listed).toContain('<a class="item" href="../../tools/trim-lever/index.html">Trim lever</a>');
    expect(listed).toMatch(
      /<a class="item" href="..\/..\/fasteners\/[a-z0-9-]+\/index.html">Arch screw<\/a>/,
    );
    expect(listed).toMatch(/<th scope="row">Bumper cover/);
    expect(html).not.toContain('/tools/');
  });

  it('puts the safety alert symbol on every signal word but NOTICE (ANSI Z535.6)', () => {
    const bars = [...html.matchAll(/<p class="signal">(.*?)<\/p>/gs)].map((match) => match[1] ?? '');
    expect(bars).toHaveLength(6);
    for (const bar of bars) expect(bar.includes('<svg')).toBe(!bar.includes('NOTICE'));
  });

  it('puts no word over mere damage where the shop follows ISO 3864-2, which has none', async () => {
    const settings = { ...fixture.shop.settings, signalWords: 'iso' } as const;
    const iso = guideHtml(fixture.guide, fixture.job, { ...fixture.shop, settings });
    expect(iso).not.toContain('NOTICE');
    expect(iso).toContain('Cold trim cracks');
    expect(await htmlFaults(iso)).toEqual([]);
  });

  it('gathers the messages in front, most severe first, each once', () => {
    const front = html.slice(html.indexOf('id="safety_first"'), html.indexOf('id="need_title"'));
    expect([...front.matchAll(/aria-label="([A-Z]+)"/g)].map((match) => match[1])).toEqual([
      'WARNING',
      'CAUTION',
      'NOTICE',
    ]);
    expect(front.match(/Flying chips/g)).toHaveLength(1);
  });

  it('says in words for which builds a phrase, a step and a line of a list stand', () => {
    expect(html).toContain(
      '<span data-plans="0"><span class="only">[with front fog lamps: </span>Reach behind and ' +
        '<strong class="action">disconnect both fog lamp plugs</strong>.<span class="only">]</span></span>',
    );
    expect(html).toMatch(/id="fog-aim"[^>]* data-plans="0">/);
    expect(html).toContain('<p class="only">Only with front fog lamps</p>');
    expect(html).toContain(
      '<li data-plans="0"><span class="only">With front fog lamps: </span>Fog lamps light, both sides</li>',
    );
  });

  it('tells a figure of the job apart by build only where it differs', () => {
    const glance = html.slice(html.indexOf('id="at_a_glance"'), html.indexOf('id="safety_first"'));
    expect(glance).toContain(
      '<div data-plans="0">26–\u206047\u00a0min, likely 34\u00a0min <span class="only">(with front fog lamps)</span></div>',
    );
    expect(glance).toContain('<div>30\u00a0min</div>');
  });

  it('prints each torque in both units, with its order of tightening', () => {
    expect(html).toContain('<strong>25\u00a0N·m (18.4\u00a0lbf·ft)</strong>, crosswise');
  });

  it('numbers steps, and lets the script set the number of a build', () => {
    expect(html).toContain('<a href="#cut-notch">step <span data-step="cut-notch">4</span></a>');
    const table = JSON.parse(/id="pick_table">(.*?)<\/script>/s.exec(html)?.[1] ?? '');
    expect(table.builds).toEqual({ yes: 0, no: 1 });
    expect(html).toMatch(/<article class="step" id="fog-aim"[^>]* data-plans="0">/);
  });

  it('keeps the gather list under the heading beneath which the author declared it', () => {
    const need = html.slice(html.indexOf('id="need"'), html.indexOf('id="off"'));
    expect(need).toContain('Torque wrench, 10–\u206060\u00a0N·m');
    expect(need).toContain('or 7\u00a0mm nut driver');
    expect(need).toContain('The vehicle needs no special condition');
    const off = html.slice(html.indexOf('id="off"'), html.indexOf('id="strip-down"'));
    expect(off).toContain('Arch screw');
    expect(off).toContain('2 (1 each side)');
  });

  it('says when every build reads alike, by showing no choice at all', () => {
    const [plan] = fixture.job.plans;
    if (!plan) throw new Error('the fixture has no plan');
    const same = guideHtml(fixture.guide, { ...fixture.job, decidingOptions: [], plans: [plan] });
    expect(same).not.toContain('class="pick"');
    expect(same).not.toContain('class="only"');
  });
});
