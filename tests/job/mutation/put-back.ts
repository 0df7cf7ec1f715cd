/**
 * Faults that a fitter found in the demo when it was read as one would read it under a vehicle (common practice, no
 * source). Each was mended; put back, each is a finding.
 */
export interface PutBack {
  readonly fault: string;
  readonly guide: string;
  readonly file: string;
  readonly edit: (text: string) => string;
  /** The rule that finds it. */
  readonly code: string;
}

/** One piece of text for another; it must be there. */
function swapped(text: string, from: string | RegExp, to: string): string {
  const changed = text.replace(from, to);
  if (changed === text) throw new Error(`the demo does not say ${from}`);
  return changed;
}

const without = (from: string | RegExp) => (text: string) => swapped(text, from, '');

/** A line of the guide before another one. */
const moved = (line: string, before: string) => (text: string) =>
  swapped(swapped(text, line, ''), before, `${line}${before}`);

const vehicleIn = 'procedures/vehicle-in.md';
const battery = 'procedures/battery-isolate.md';
const batteryLine = '::procedure{of=battery-isolate #battery-procedure}\n\n';
const liningBack = '::reverse{of=lining-procedure when=lining}\n\n';
const leakTest = '::step[Look for leaks';
const guideFile = (guide: string) => ({ guide, file: `${guide}/guide.md` });

export const putBack: readonly PutBack[] = [
  {
    fault: 'the key is carried away, then the wheel is turned against the steering lock',
    ...guideFile('lamp-cradle'),
    edit: moved(batteryLine, '::step[Fold the arch liner back]'),
    code: 'need-unmet',
  },
  {
    fault: 'the battery lies under a bonnet that nobody has opened',
    guide: 'lamp-cradle',
    file: battery,
    edit: (text) => swapped(text, ':set[battery-access].', 'Look where the battery stands.'),
    code: 'need-unmet',
  },
  {
    fault: 'the undertray comes down with no lift or stands',
    ...guideFile('lamp-cradle'),
    edit: (text) => swapped(text, ':set[supported]{with="jack axle-stands"}.', 'Look at the tray.'),
    code: 'need-unmet',
  },
  {
    fault: 'the relay loom has no feed',
    ...guideFile('lamp-cradle'),
    edit: without(/:connect\[feed-plug\] at the accessory fuse box.*\n/),
    code: 'connector-left-apart',
  },
  {
    fault: 'the relay loom has no earth: the bolt for it is never handled',
    ...guideFile('lamp-cradle'),
    // With its line, the mark of its picture that names it goes.
    edit: without(
      /:remove\[earth-bolt\][\s\S]*?:tighten\[earth-bolt\]\.\n|^- :mark\[A\].*:fastener\[earth-bolt\].*\n/gm,
    ),
    code: 'item-unused',
  },
  {
    fault: 'the engine runs indoors',
    ...guideFile('flush-sensors'),
    edit: (text) => swapped(text, 'engine off, reverse engaged', 'engine running, reverse engaged'),
    code: 'engine-unguarded',
  },
  {
    fault: 'a hand tests behind a vehicle that is not chocked',
    guide: 'flush-sensors',
    file: vehicleIn,
    edit: without(':set[chocked]{with=wheel-chocks}. '),
    code: 'need-unmet',
  },
  {
    fault: 'holes are drilled by a curtain airbag with the battery on',
    ...guideFile('side-awning'),
    edit: (text) =>
      moved(
        '::procedure{of=airbag-wait #airbag-procedure}\n\n',
        '## Fit {#fit}',
      )(moved(batteryLine, '## Fit {#fit}')(text)),
    code: 'need-unmet',
  },
  ...['side-awning', 'roof-vent'].map((guide) => ({
    fault: `the lining is closed before the leak test (${guide})`,
    ...guideFile(guide),
    edit: moved(liningBack, leakTest),
    code: 'part-still-covered',
  })),
  ...['side-awning', 'roof-vent'].map((guide) => ({
    fault: `no time for the primer to dry (${guide})`,
    ...guideFile(guide),
    edit: without(' wait="30 min"'),
    code: 'supply-not-dry',
  })),
  {
    fault: 'a fork terminal goes under the earth bolt',
    ...guideFile('switch-panel'),
    edit: (text) =>
      swapped(
        swapped(
          text,
          /:remove\[earth-bolt\](.*) and put.*\n/,
          ':loosen[earth-bolt]$1 and push the fork of the loom under it.\n',
        ),
        /:refit\[earth-bolt\]\{[^}]*\} and /,
        '',
      ),
    code: 'terminal-open',
  },
  {
    fault: 'the seat stands unbolted, and nothing says that the vehicle must not be moved',
    ...guideFile('swivel-seat'),
    edit: (text) => swapped(text, 'work=seat-belt immobile}\n::connector', 'work=seat-belt}\n::connector'),
    code: 'movement-unstated',
  },
  {
    fault: 'no fault read-out when the vehicle comes in',
    guide: 'switch-panel',
    file: vehicleIn,
    edit: (text) =>
      swapped(text, ':set[faults-read]{with=fault-reader}', 'Look at the lamps with the :tool[fault-reader]'),
    code: 'need-unmet',
  },
  {
    fault: 'the driver assistance is not calibrated',
    ...guideFile('lamp-cradle'),
    edit: (text) =>
      swapped(text, ':set[calibrated]{with=fault-reader}', 'Look at it with the :tool[fault-reader]'),
    code: 'need-unmet',
  },
  {
    fault: 'the sensors are not taught',
    ...guideFile('flush-sensors'),
    edit: (text) =>
      swapped(text, ':set[taught]{with=fault-reader}', 'Look at them with the :tool[fault-reader]'),
    code: 'need-unmet',
  },
  {
    fault: 'the weight sensor of the seat is not taught',
    ...guideFile('swivel-seat'),
    edit: (text) =>
      swapped(text, ':set[seat-taught]{with=fault-reader}', 'Look at it with the :tool[fault-reader]'),
    code: 'need-unmet',
  },
  {
    fault: 'no radio code, and nothing learnt again after the loss of power',
    guide: 'switch-panel',
    file: battery,
    edit: (text) => swapped(text, ':set[power-loss]. Switch', 'Switch'),
    code: 'need-unmet',
  },
  ...['side-awning', 'roof-vent'].map((guide) => ({
    fault: `no cavity wax behind what was drilled or cut (${guide})`,
    ...guideFile(guide),
    edit: without(/:apply\[cavity-wax\]\{[^}]*\}/),
    code: 'supply-never-applied',
  })),
  {
    fault: '"undo the negative post only" is said at reconnecting',
    guide: 'switch-panel',
    file: battery,
    edit: (text) => swapped(text, 'keep the spanner to the negative post', 'undo the negative post only'),
    code: 'message-one-way',
  },
];
