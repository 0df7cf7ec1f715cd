import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { type OfficeFile, officeFile, p, picture, run, table } from './office-file.ts';

/** Writes the old guides that were made with a word processor: `npx tsx tests/adopt/write-office-files.ts`. */
const old = join(import.meta.dirname, 'old');
const edge = new Uint8Array(readFileSync(join(old, 'pictures/edge.png')));
const rail = new Uint8Array(readFileSync(join(old, 'pictures/rail.png')));

const step = (text: string) => p(text, { list: 1 });
const dot = (text: string) => p(text, { list: 2 });
const heading = (text: string) => p(text, { style: 'Heading1' });
const bold = (text: string) => p(run(text, true));
const link = (id: string, text: string) => `<w:hyperlink r:id="${id}">${run(text)}</w:hyperlink>`;
const footnote = (id: number) => `<w:r><w:footnoteReference w:id="${id}"/></w:r>`;
const box = (text: string) =>
  `<w:p><w:r><w:pict><v:shape><v:textbox><w:txbxContent>${p(text)}</w:txbxContent></v:textbox></v:shape></w:pict></w:r></w:p>`;

const files: { readonly [name: string]: OfficeFile } = {
  '14-bike-carrier': {
    body: [
      p('Bicycle carrier for the Sable Cob', { style: 'Title' }),
      heading('Parts list'),
      dot('2 x Carrier arm'),
      dot('4 x M8x40 bolt'),
      dot('4 x M8 lock nut'),
      dot('1 x Lock'),
      heading('Tools required'),
      dot('13 mm socket'),
      dot('13 mm spanner'),
      dot('Torque wrench'),
      heading('Fitting'),
      step('Open the tailgate and remove the two rubber buffers.'),
      step('Hold the carrier arms against the tailgate. Fit the four M8x40 bolts from the outside.'),
      step('Fit the four M8 lock nuts from the inside, finger tight.'),
      step('Tighten the M8 lock nuts to 21 Nm.'),
      p(
        `${run('WARNING: ', true)}${run('A loose carrier can fall onto the road. Check the nuts before each trip.')}`,
      ),
      step('Refit the two rubber buffers.'),
      step('Close the tailgate gently and check the gaps.'),
    ].join(''),
    header: 'Kerb Lane Fitting - fitting sheet 14',
    footer: 'Printed copies are not kept up to date.',
  },
  '15-water-tank': {
    body: [
      heading('WATER TANK 60 L'),
      table([
        ['Step', 'Picture', 'Work', 'Torque'],
        [
          '1',
          p(picture('edge', 'The floor behind the seats')),
          'Remove the four T30 bolts from the floor rail.',
          '',
        ],
        ['2', '', 'Set the tank on the floor with its outlet to the rear.', ''],
        [
          '3',
          p(picture('rail', 'The strap over the tank')),
          'Lay the two straps over the tank. Fit the four M8 strap bolts.',
          '19 Nm',
        ],
        ['4', '', 'Push the hose onto the outlet and close the two hose clamps.', '3 Nm'],
        ['5', '', 'Fill the tank and look for leaks. Wait 30 minutes and look again.', ''],
      ]),
      p('Caution: A full tank weighs 60 kg and can crush a foot. Fill it only once it is strapped down.'),
    ].join(''),
    pictures: { edge, rail },
  },
  '16-partition': {
    body: [
      p('Partition wall', { style: 'Heading1' }),
      p('This sheet describes how the wall is fitted behind the front seats of the Sable Cob.'),
      p('Slide both seats forward. Remove the two belt trim caps and store them in the glove box.'),
      p(
        'Lift the wall in through the side door; this needs two people. Stand it on the rear rail and lean it forward.',
      ),
      p(
        'Bolt the wall to the rail with six M8x25 bolts and tighten them to 23 Nm. Then bolt the top to the roof bow with two M6x16 bolts at 9 Nm.',
      ),
      p('Refit the two belt trim caps. Slide the seats back and check that they lock.'),
      p('The wall must be checked every year.'),
    ].join(''),
    comments: ['Ask the maker whether the top bolts may be re-used.'],
  },
  '17-winch-tray': {
    body: [
      bold('Winch tray WT-2'),
      bold('What you get'),
      p('Tray – 1'),
      p('M12x40 bolt – 4'),
      p('M12 flange nut – 4'),
      p('Spacer, 8 mm – 2'),
      bold('REMOVE THE BUMPER'),
      p('1. Unplug both fog lamp plugs.'),
      p('2. Remove the six push clips from the upper edge of the bumper cover.'),
      p('3. Undo the three T25 screws on each side.'),
      p('4. Pull off the bumper cover with a helper.'),
      bold('FIT THE TRAY'),
      p('5. Lift the tray into place between the rails.'),
      p('6. Insert the four M12x40 bolts with the four M12 flange nuts.'),
      p('7. Tighten the M12 flange nuts to 85 Nm (63 ft-lb).'),
      bold('PUT IT BACK TOGETHER'),
      p('8. Refit the bumper in the reverse order of removal.'),
    ].join(''),
  },
  '18-solar-panel': {
    body: [
      p('Solar panel 120 W', { style: 'Title' }),
      p(`${run('Read the ')}${link('guide', 'controller’s manual')}${run(' first.')}${footnote(1)}`),
      box('DANGER: A panel in the sun is live and can give a shock. Cover it until all is connected.'),
      heading('On the roof'),
      step('Clean the roof where the four corner mounts go.'),
      step('Apply a bead of sealant to each of the four corner mounts.'),
      step('Press the panel down. Leave it for 24 hours.'),
      heading('Inside'),
      step('Drill one 9 mm hole for the cable gland.'),
      step('Screw the controller to the wall with four M4x16 screws (2 Nm).'),
      step('Connect the battery first, then the panel.'),
      p(picture('far', 'The roof from above', true)),
    ].join(''),
    footnotes: ['The manual lies in the box of the controller.'],
    outside: {
      guide: ['hyperlink', 'https://example.com/manual'],
      far: ['image', 'https://example.com/roof.png'],
    },
  },
  '19-seat-swivel': {
    body: [
      p('Swivel base – “Turn 2”', { style: 'Heading1' }),
      p('Contents', { style: 'Heading2' }),
      p('Swivel base: 1'),
      p('M10 x 30 bolts: 4'),
      p('Removal', { style: 'Heading2' }),
      step(`${run('Dis')}${run('connect the seat’s airbag plug.')}`),
      step('Remove the four M10 seat bolts, using a 17mm socket.'),
      step('Lift out the seat.'),
      p('Installation', { style: 'Heading2' }),
      step('Lower the swivel base onto the seat box.'),
      step('Install the four M10 x 30 bolts. Torque them to 354 in-lb.'),
      step('Put the seat on the swivel base. Refit the four M10 seat bolts and tighten to 40–45 Nm.'),
      step('Reconnect the airbag plug.'),
    ].join(''),
  },
  '20-tool-drawer': {
    body: [
      p('Tool drawer TD-6, fitting instructions', { style: 'Heading1' }),
      table([
        ['Item', 'Description', 'Quantity'],
        ['A', 'Drawer', '1'],
        ['B', 'Slide', '2'],
        ['C', 'M6x12 button head screw', '8'],
        ['D', 'M6 rivet nut', '8'],
      ]),
      p('Method', { style: 'Heading2' }),
      step('Mark the eight holes with the slides as a template.'),
      p('Keep 20 mm away from the wheel arch.', { list: 2, level: 1 }),
      p('Look under the floor for wires.', { list: 2, level: 1 }),
      step('Drill the eight holes to 9 mm.'),
      step('Set the eight M6 rivet nuts.'),
      step('Fit the two slides with the eight M6x12 button head screws and a 5 mm hex key.'),
      step('Tighten the M6x12 button head screws to 6.5 Nm.'),
      step(
        `${run('Hang the drawer in the slides')}<w:ins w:id="9" w:author="K">${run(' and shut it')}</w:ins><w:del w:id="8" w:author="K"><w:r><w:delText>, then open it</w:delText></w:r></w:del>${run('.')}`,
      ),
      p('NOTICE: Water ruins the slides. Do not wash them with a jet.'),
    ].join(''),
  },
};

for (const [name, file] of Object.entries(files)) writeFileSync(join(old, `${name}.docx`), officeFile(file));
