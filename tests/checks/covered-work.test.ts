import { describe, expect, it } from 'vitest';
import { told } from './told.ts';

const liner = `::part[Arch liner]{#liner covers="sensor hose"}
::part[Level sensor]{#sensor}
::part[Washer hose]{#hose}

`;

describe('work behind a cover that is in place', () => {
  it.each(['clean', 'route'])('is told: :%s', async (verb) => {
    const behind = `::step[Work]{#job}\n\n:${verb}[sensor]. Leave the :part[liner] and the :part[hose] alone.`;
    expect(await told(`${liner}${behind}`)).toEqual([`part-still-covered: :${verb}[sensor]`]);
    const open = `::step[Work]{#job}\n\n:move-aside[liner], :${verb}[sensor] and :move-back[liner]. Leave the :part[hose] alone.`;
    expect(await told(`${liner}${open}`)).toEqual([]);
  });

  it('is none on the bench, where nothing lies over it', async () => {
    const bench = `::step[Work]{#job}\n\n:move-aside[liner] and :remove[sensor]. :move-back[liner] for now, and :clean[sensor]. :move-aside[liner] again, :refit[sensor] and :move-back[liner]. Leave the :part[hose] alone.`;
    expect(await told(`${liner}${bench}`)).toEqual([]);
  });
});

it('a bead of sealant in the place of an old seal wants its cover off', async () => {
  const body = (order: string) =>
    `::part[Cover]{#cover covers=seal}\n::part[Seal]{#seal}\n::supply[Sealant]{#bead quantity="1 m" replaces=seal}\n\n::step[Change the seal]{#change}\n\n:remove[cover], :remove[seal] and :discard[seal]. ${order}.`;
  const bead = ':apply[bead]{amount="1 m"}';
  expect(await told(body(`${bead}, and :refit[cover]`))).toEqual([]);
  expect(await told(body(`:refit[cover], and ${bead}`))).toEqual([`part-still-covered: ${bead}`]);
});

it('a one-time fastener from the box is driven once', async () => {
  const body = (words: string) =>
    `::tool[T20 bit]{#bit drive=T20}\n::kit[Rail]{#rail}\n::kit[Coated screw]{#screw drive=T20 reuse=no holds=rail}\n\n::step[Fit the rail]{#job}\n\n:fit[rail] and :fit[screw]{with=bit}. ${words}`;
  expect(await told(body(''))).toEqual([]);
  expect(await told(body(':remove[screw]{with=bit}, and :fit[screw]{with=bit} again.'))).toEqual([
    'one-time-refitted: :fit[screw]{with=bit}',
  ]);
});

describe('a warning after what it guards', () => {
  const step = (
    after: string,
    message = ':::caution[Grit]\nDirt falls out of the tray and can hurt an eye. Look away.\n:::',
  ) =>
    `::part[Undertray]{#undertray}\n::part[Heat shield]{#shield}\n\n::step[Take down the tray]{#tray}\n\n:remove[undertray]{as=tray}, and :refit[undertray]{as=tray}.\n\n${message}\n\n${after}`;

  it.each([
    ['nothing is said but what stays', 'The :part[shield] stays in.'],
    ['a sentence that does nothing follows', 'The tray is heavy. The :part[shield] stays in.'],
  ])('is told where %s', async (_, after) => {
    const [first] = await told(step(after));
    expect(first?.slice(0, 13)).toBe('message-late:');
  });

  it('is none before further work', async () => {
    expect(await told(step(':remove[shield]. Then :refit[shield].'))).toEqual([]);
  });

  it('is told where it speaks of work that is not done again', async () => {
    const late = ':::caution[Sharp clips]\nA clip can hurt a finger when you are prying. Wear gloves.\n:::';
    const found = await told(step(':move-aside[shield]. Then :move-back[shield].', late));
    expect(found.map((line) => line.slice(0, 12))).toEqual(['message-late']);
  });
});

it('the refit of a step repeats what guards its section, and other airbag work is warned of too', async () => {
  const message =
    ':::warning[Airbag charge]\nA charged module can fire and injure you. Wait for its time.\n:::';
  const guide = (guarded: string) => `## Need {#need}

::condition[Battery isolated]{#battery-off}
::connector[Airbag plug]{#airbag-plug work=airbag needs=battery-off}

## Off {#off}

${guarded}

::step[Isolate the battery]{#isolate}

:set[battery-off]{say="make sure of"}.

::step[Free the plug]{#free sign-off=second}

:disconnect[airbag-plug].

## On {#on}

::reverse{of=free}

::reverse{of=isolate}`;
  expect(await told(guide(message))).toEqual([]);
  expect(await told(guide(''))).toEqual([]);
});
