import { describe, expect, it } from 'vitest';
import { readBody, soundGuide, stepsIn, told } from './read.ts';

/** The derived steps of a guide: id, title and what each tells. */
function refit(body: string) {
  const guide = soundGuide(body);
  return stepsIn(guide)
    .filter(({ origins }) => origins.some(({ kind }) => kind === 'reverse'))
    .map((step) => ({ id: step.id, title: step.titleText, text: told(guide, step) }));
}

describe('a reversal', () => {
  it('puts back in reverse order, each step by the sentence of its first action', () => {
    expect(
      refit(`::part{#cover}
::part[Undertray]{#tray covers=cover}
::fastener[Tray screw]{#tray-screw count=4 holds=tray}
::connector[Fog lamp plug]{#plug side=each on=cover when=fog}

## Strip {#strip}

::step[Drop the tray]{#tray-off}

:remove[tray-screw], then :remove[tray]{say=lower}.

::step[Draw off the cover]{#cover-off people=2}

:where[Reach behind and :disconnect[plug].]{when=fog} Then :remove[cover]{say="lift away"}.

:::refit-note{when=fog}
Keep it 100 mm out until the plugs are in.
:::

::step[Look behind]{#look}

Look for damage.

## Refit {#refit}

::reverse{of=strip}
`),
    ).toEqual([
      {
        id: 'refit-cover-off',
        title: 'Refit the bumper cover',
        text: '{Keep it 100 mm out until the plugs are in.}\nRefit the bumper cover. {Connect both fog lamp plugs.}',
      },
      {
        id: 'refit-tray-off',
        title: 'Refit the undertray',
        text: 'Refit the undertray. Refit the 4 tray screws.',
      },
    ]);
  });

  it('tightens what has a torque at the end, after the last refit', () => {
    const [step] = refit(`::part{#cover}
::part[Bracket]{#bracket}
::fastener[Bracket bolt]{#bolt count=2 torque="8 N·m" holds=bracket}
::fastener[Cover clip]{#clip holds=cover}

## Strip {#strip}

::step[All off]{#all}

:remove[clip] and :remove[cover]. :remove[bolt] and :remove[bracket].

## Refit {#refit}

::reverse{of=all}
`);
    expect(step?.text).toBe(
      'Refit the bracket. Refit the 2 bracket bolts. Refit the bumper cover. Refit the cover clip. ' +
        'Tighten the 2 bracket bolts to 8\u00a0N·m (70.8\u00a0lbf·in).',
    );
  });

  it('leaves a fastener started that an earlier step loosened, and that step tightens it', () => {
    const steps = refit(`::part{#cover}
::fastener[Bolt]{#bolt torque="8 N·m" holds=cover}

## Strip {#strip}

::step[Loosen]{#loose}

:loosen[bolt].

::step[Take off]{#off}

:remove[bolt] and :remove[cover].

## Refit {#refit}

::reverse{of=strip}
`);
    expect(steps.map(({ text }) => text)).toEqual([
      'Refit the bumper cover. Refit the bolt.',
      'Tighten the bolt to 8\u00a0N·m (70.8\u00a0lbf·in).',
    ]);
  });

  it('undoes conditions, things moved aside and temporary covers, and nothing that stays', () => {
    const [step] = refit(`::part{#cover}
::condition[Battery isolated]{#battery clear="bolt the lead down"}
::supply[Tape]{#tape quantity="2 m" temporary}
::supply[Grease]{#grease quantity="5 ml"}

## Strip {#strip}

::step[Prepare]{#prepare}

:set[battery]{say="unbolt the lead of" as=battery}. :apply[tape]{amount="1 m"}. :apply[grease]{amount="2 ml"}. :move-aside[cover].
:clean[cover].

## Refit {#refit}

::reverse{of=strip}
`);
    expect(step?.text).toBe('Move the bumper cover back. Take off the tape. Bolt the lead down.');
  });

  it('drops what a step undoes itself: a trial fit leaves nothing', () => {
    expect(
      refit(`::kit[Cradle]{#cradle}

## Strip {#strip}

::step[Try it]{#try}

:fit[cradle], look, and :remove[cradle].

## Refit {#refit}

::reverse{of=strip}
`),
    ).toEqual([]);
  });

  it('fits the new fastener where the old one goes back only once', () => {
    const [step] = refit(`::part{#cover}
::fastener[Stretch bolt]{#old count=2 reuse=no holds=cover}
::kit[New bolt]{#new count=2 replaces=old thread=M8x1.25 torque="25 N·m" holds=cover}

## Strip {#strip}

::step[Off]{#off}

:remove[old] and :remove[cover]. :discard[old].

## Refit {#refit}

::reverse{of=strip}
`);
    expect(step?.text).toBe(
      'Refit the bumper cover. Fit the 2 new bolts. Tighten the 2 new bolts to 25\u00a0N·m (18.4\u00a0lbf·ft).',
    );
  });

  it('shares a stated time out as the strip-down took it', () => {
    const guide = soundGuide(`::part{#cover}
::fastener[Clip]{#clip holds=cover}

## Strip {#strip}

::step[Clips]{#clips time="2 min"}

:remove[clip].

::step[Cover]{#cover-off time="6 min"}

:remove[cover].

## Refit {#refit}

::reverse{of=strip time="4 min"}
`);
    const times = stepsIn(guide)
      .slice(2)
      .map(({ time }) => time?.value.likely);
    expect(times).toEqual([3, 1]);
  });

  it.each([
    ['::reverse{of=gone}', 'reverse-unknown'],
    ['::reverse{of=refit}', 'reverse-itself'],
    ['::reverse{of=strip}\n::reverse{of=cover-off}', 'reverse-doubled'],
    ['::reverse{of=strip except=gone}', 'reverse-unknown'],
  ])('%j is told of', (line, code) => {
    const { findings } = readBody(
      `::part{#cover}\n\n## Strip {#strip}\n\n::step[Off]{#cover-off}\n\n:remove[cover].\n\n## Refit {#refit}\n\n${line}\n`,
    );
    expect(findings.map((one) => one.code)).toEqual([code]);
  });

  it.each([
    ['what is cut', ':cut[notch]{with=saw}'],
    ['what is bonded', ':bond[strip-kit]'],
    ['what is given away', ':remove[cover] and :hand-over[cover]'],
  ])('%s is told of, with the step that has to be written', (_, action) => {
    const { findings } = readBody(`::part{#cover}
::tool[Saw]{#saw}
::kit[Strip]{#strip-kit}

:::cut-template[Notch]{#notch panel=cover face=outside}
::outline{points="0,0 9,0 9,9" unit=mm}
:::

## Strip {#strip}

::step[For good]{#good}

${action}.

## Refit {#refit}

::reverse{of=strip}
`);
    expect(findings.map(({ code, message }) => [code, message.includes('except=good')])).toEqual([
      ['reverse-unsound', true],
    ]);
  });
});

describe('a part that another replaces', () => {
  const body = (fit: string, refit: string) => `## Off {#off}

::part[Tray]{#tray}
::kit[New tray]{#new-tray replaces=tray}

::step[Take the tray out]{#out}

:remove[tray] and :discard[tray].

## In {#in}

${fit}
${refit}`;

  it('is told where no step puts the new one in, also when the old one is discarded', () => {
    const { findings } = readBody(body('', '::reverse{of=off}\n'));
    expect(findings.map(({ code }) => code)).toEqual(['reverse-unsound']);
  });

  it('is left to the step that puts the new one in', () => {
    const fit = '::step[Put the new tray in]{#put}\n\n:fit[new-tray].\n';
    expect(readBody(body(fit, '::reverse{of=off}\n')).findings).toEqual([]);
  });
});
