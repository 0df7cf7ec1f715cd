/**
 * What the photograph-like renderings of the demo show, each 1200 × 900: surfaces with light and shade, and shadows
 * that set one thing off from another. `photographs.ts` adds grain and writes them as a camera would.
 */

/** A straight run of colours from above to below, or from left to right. */
function run(id: string, colours: readonly string[], across = false): string {
  const stops = colours.map(
    (colour, i) => `<stop offset="${i / (colours.length - 1)}" stop-color="${colour}"/>`,
  );
  return `<linearGradient id="${id}" x1="0" y1="0" x2="${across ? 1 : 0}" y2="${across ? 0 : 1}">${stops.join('')}</linearGradient>`;
}

const defs = `<defs>
  ${run('steel', ['#5a6065', '#34393d', '#4a5055'])}
  ${run('bright', ['#eef1f3', '#a9b0b5', '#6f767b', '#c5cacd'])}
  ${run('rod', ['#6a7176', '#dde2e5', '#8c9398', '#4d5357'])}
  ${run('blue', ['#7fa6c4', '#46779a', '#2c5370'])}
  ${run('white', ['#f4f5f3', '#d4d8d6', '#b9bfbd'])}
  ${run('black', ['#4a4f53', '#1b1e20', '#303437'])}
  ${run('paper', ['#f0e3b4', '#dccb92'])}
  ${run('wood', ['#8a6a48', '#b08a62', '#7d5e3f'])}
  ${run('gel', ['#eceee8', '#cfd3c8', '#dfe2d8'])}
  ${run('grip', ['#2f7d6c', '#1c5549', '#123a32'])}
  ${run('red', ['#c4574a', '#8c2f26'])}
  <radialGradient id="head" cx="0.4" cy="0.35" r="0.8"><stop offset="0" stop-color="#f5f7f8"/><stop offset="0.6" stop-color="#a4abb0"/><stop offset="1" stop-color="#585f64"/></radialGradient>
  <radialGradient id="dark" cx="0.5" cy="0.5" r="0.7"><stop offset="0" stop-color="#050607"/><stop offset="1" stop-color="#23282b"/></radialGradient>
  <filter id="soft" x="-30%" y="-30%" width="160%" height="160%"><feGaussianBlur stdDeviation="12"/></filter>
  </defs>`;

const ground = (fill: string): string => `${defs}<rect width="1200" height="900" fill="url(#${fill})"/>`;

/** The shadow that a shape throws on what lies behind it. */
const shadow = (d: string, x = 14, y = 20): string =>
  `<path d="${d}" transform="translate(${x} ${y})" fill="#000" opacity="0.42" filter="url(#soft)"/>`;

const solid = (d: string, fill: string, edge = '#1b1f22'): string =>
  `${shadow(d)}<path d="${d}" fill="url(#${fill})" stroke="${edge}" stroke-width="3" stroke-linejoin="round"/>`;

/** A light that runs along an edge. */
const gleam = (d: string, width = 5): string =>
  `<path d="${d}" fill="none" stroke="#fff" stroke-width="${width}" stroke-linecap="round" opacity="0.55"/>`;

function ring(sides: number, r: number): string {
  const corners = Array.from({ length: sides }, (_, i) => {
    const angle = (i * 2 * Math.PI) / sides;
    return `${(r * Math.cos(angle)).toFixed(1)} ${(r * Math.sin(angle)).toFixed(1)}`;
  });
  return `M${corners.join('L')}Z`;
}

/** A hexagon head or nut with its flange from above; `striped` as the paint pen leaves it once it is tight. */
const hexagon = (x: number, y: number, r: number, stud = false, striped = false): string =>
  `<ellipse cx="${x + r * 0.2}" cy="${y + r * 0.3}" rx="${r * 1.1}" ry="${r}" fill="#000" opacity="0.45" filter="url(#soft)"/>` +
  `<circle cx="${x}" cy="${y}" r="${r}" fill="url(#head)" stroke="#3c4246" stroke-width="3"/>` +
  `<path d="${ring(6, r * 0.72)}" transform="translate(${x} ${y}) rotate(12)" fill="url(#bright)" stroke="#3c4246" stroke-width="3"/>` +
  (stud
    ? `<circle cx="${x}" cy="${y}" r="${r * 0.34}" fill="url(#steel)" stroke="#22262a" stroke-width="3"/>`
    : '') +
  (striped
    ? `<path d="M${x + r * 0.3} ${y - r * 0.2}L${x + r * 1.5} ${y - r * 0.7}" stroke="#f0b429" stroke-width="9" stroke-linecap="round"/>`
    : '');

const crossScrew = (x: number, y: number, r: number): string =>
  `<ellipse cx="${x + 4}" cy="${y + 7}" rx="${r * 1.1}" ry="${r}" fill="#000" opacity="0.45" filter="url(#soft)"/>` +
  `<circle cx="${x}" cy="${y}" r="${r}" fill="url(#head)" stroke="#444b50" stroke-width="3"/>` +
  `<path d="M${x - r * 0.5} ${y}H${x + r * 0.5}M${x} ${y - r * 0.5}V${y + r * 0.5}" stroke="#2a2f33" stroke-width="${r * 0.24}"/>`;

const wire = (d: string, colour: string, width = 22): string =>
  `${`<path d="${d}" transform="translate(10 16)" fill="none" stroke="#000" stroke-width="${width}" opacity="0.4" filter="url(#soft)"/>`}` +
  `<path d="${d}" fill="none" stroke="${colour}" stroke-width="${width}" stroke-linecap="round"/>` +
  `<path d="${d}" transform="translate(-2 -4)" fill="none" stroke="#fff" stroke-width="${width * 0.18}" opacity="0.35" stroke-linecap="round"/>`;

/** A ring terminal with its crimped barrel, the hole at the origin, turned clockwise by degrees. */
const terminal = (x: number, y: number, turn: number): string =>
  `<g transform="translate(${x} ${y}) rotate(${turn})">${solid('M0 -52A52 52 0 1 0 40 33L110 24H170V-24H110L40 -33A52 52 0 0 0 0 -52Z', 'bright')}<path d="M118 -24V24M150 -24V24" stroke="#5b6267" stroke-width="4"/></g>`;

const masking = (d: string): string => `${shadow(d, 3, 5)}<path d="${d}" fill="url(#paper)" opacity="0.94"/>`;

const cutter = (x: number, y: number): string =>
  `<g transform="translate(${x} ${y}) rotate(-28)">${solid('M-9 -10L-14 -58C-14 -76 14 -76 14 -58L9 -10C9 4 -9 4 -9 -10Z', 'rod')}${solid('M-26 -150H26V-72H-26Z', 'bright')}${solid('M-56 -470C-56 -500 56 -500 56 -470V-190L30 -150H-30L-56 -190Z', 'grip')}${gleam('M-36 -450V-210')}</g>`;

/** The lower edge of the front cover: taped, marked and half cut. */
const notch = `${ground('wood')}
  ${solid('M0 130H1200V640C900 690 300 690 0 640Z', 'blue', '#20394a')}
  ${gleam('M0 170C400 190 800 190 1200 170', 10)}
  ${masking('M240 330H960V672C760 684 440 684 240 672Z')}
  <path d="M430 680V470Q430 430 470 430H730Q770 430 770 470V680" fill="none" stroke="#1d3b8f" stroke-width="6"/>
  <path d="M430 680V470Q430 430 470 430H560L540 470L556 520L520 560L530 620L500 681C480 681 450 681 430 680Z" fill="url(#wood)"/>
  <path d="M430 680V470Q430 430 470 430H560" fill="none" stroke="#e7eef2" stroke-width="7"/>
  <path d="M600 300V700" stroke="#1d3b8f" stroke-width="3" stroke-dasharray="34 10 6 10"/>
  <circle cx="372" cy="540" r="20" fill="#101314"/><circle cx="828" cy="540" r="20" fill="#101314"/>
  ${[
    [520, 720],
    [470, 760],
    [600, 742],
    [560, 800],
    [650, 780],
    [410, 740],
    [700, 730],
  ]
    .map(([x, y]) => `<path d="M${x} ${y}q10 -16 24 -4q-4 14 -24 4z" fill="#3b6a8b"/>`)
    .join('')}
  ${cutter(570, 438)}`;

/** The cradle's two arms on the four studs of the beam, each nut striped, the lamps below. */
const cradle = `${ground('black')}
  ${solid('M0 170H1200V440H0Z', 'steel')}
  ${gleam('M0 196H1200', 8)}
  <path d="M0 414H1200" stroke="#121517" stroke-width="10"/>
  ${solid('M310 150H450Q460 150 460 160V390Q460 400 470 400H730Q740 400 740 390V160Q740 150 750 150H890Q900 150 900 160V780Q900 800 880 800H320Q300 800 300 780V160Q300 150 310 150Z', 'black')}
  ${gleam('M312 162H448M752 162H888M312 430V770', 6)}
  ${[
    [380, 230],
    [820, 230],
    [380, 350],
    [820, 350],
  ]
    .map(([x = 0, y = 0]) => hexagon(x, y, 42, true, true))
    .join('')}
  ${[450, 750].map((x) => `<circle cx="${x}" cy="600" r="124" fill="url(#bright)" stroke="#0d0f10" stroke-width="5"/><circle cx="${x}" cy="600" r="100" fill="url(#head)"/><circle cx="${x}" cy="600" r="34" fill="#f4f0d4"/><path d="M${x - 76} 560A88 88 0 0 1 ${x - 20} 520" fill="none" stroke="#fff" stroke-width="9" opacity="0.8"/>`).join('')}
  ${wire('M0 130C300 90 900 90 1200 130', '#15181a', 30)}`;

/** An earth bolt on bright metal, and what is plugged or pressed in beside it. */
const earth = (paint: string, rings: number, beside: string): string => `${ground(paint)}
  <path d="M0 0H1200V120C800 160 400 160 0 120Z" fill="#000" opacity="0.35"/>
  <path d="M0 760C400 720 800 720 1200 760V900H0Z" fill="#000" opacity="0.3"/>
  ${gleam('M0 150C400 190 800 190 1200 150', 8)}
  <circle cx="380" cy="470" r="118" fill="url(#bright)"/><circle cx="380" cy="470" r="118" fill="none" stroke="#000" stroke-width="4" opacity="0.3"/>
  ${rings > 1 ? wire('M500 340C640 220 760 200 760 -20', '#5a4632', 40) + terminal(380, 470, -48) : ''}
  ${wire('M545 500C700 530 640 760 560 920', '#1d2022', 40)}
  ${terminal(380, 470, 8)}
  ${hexagon(380, 470, 62)}
  ${beside}`;

/** A fuse box with one plug in it. */
const fuseBox = `${solid('M760 300H1140V700H760Z', 'black')}
  ${[0, 1, 2, 3, 4].map((i) => `<path d="M${790 + i * 66} 340H${836 + i * 66}V440H${790 + i * 66}Z" fill="url(#${i % 2 ? 'red' : 'paper'})" stroke="#111" stroke-width="3"/>`).join('')}
  <path d="M790 480H1110V660H790Z" fill="#0e1011"/>
  ${wire('M950 640C950 760 900 820 900 920', '#1d2022', 40)}
  ${solid('M870 510H1030V650H870Z', 'white')}<path d="M916 488H984V516H916Z" fill="url(#bright)" stroke="#333" stroke-width="3"/>`;

/** Two holders on a loom, each with its fuse. */
const fuseHolders = [0, 1]
  .map(
    (i) =>
      wire(
        `M${860 + i * 200} 330C${860 + i * 200} 200 ${800 + i * 200} 120 ${820 + i * 180} -20`,
        '#8c2f26',
        26,
      ) +
      wire(
        `M${860 + i * 200} 600C${860 + i * 200} 720 ${820 + i * 200} 780 ${800 + i * 200} 920`,
        '#8c2f26',
        26,
      ) +
      solid(`M${800 + i * 200} 320H${920 + i * 200}V600H${800 + i * 200}Z`, 'black') +
      solid(`M${826 + i * 200} 366H${894 + i * 200}V470H${826 + i * 200}Z`, 'red') +
      `<path d="M${842 + i * 200} 384H${878 + i * 200}V410H${842 + i * 200}Z" fill="#f0d9d4"/>`,
  )
  .join('');

/** The roof from above: the opening with its edge half primed, the file on the bare part. */
const roofEdge = `${ground('white')}
  ${gleam('M0 60C400 90 800 90 1200 60', 12)}
  <path d="M0 90H1200M0 840H1200" stroke="#9fa6a4" stroke-width="8"/>
  <path d="M330 210H870Q930 210 930 270V700Q930 760 870 760H330Q270 760 270 700V270Q270 210 330 210Z" fill="url(#dark)" stroke="#e9edef" stroke-width="20"/>
  <path d="M600 210H330Q270 210 270 270V700Q270 760 330 760H600" fill="none" stroke="#8a4a35" stroke-width="26" stroke-linecap="round"/>
  <path d="M300 300H380M310 380H420" stroke="#4a5358" stroke-width="6" opacity="0.6"/>
  <g transform="translate(640 300) rotate(28)">${solid('M150 -40H420L470 -22V22L420 40H150C138 14 138 -14 150 -40Z', 'rod')}
  ${Array.from({ length: 13 }, (_, i) => `<path d="M${170 + i * 20} -34L${200 + i * 20} 34" stroke="#596065" stroke-width="3"/>`).join('')}
  ${solid('M470 -30C520 -46 640 -40 650 0C640 40 520 46 470 30Z', 'wood')}</g>
  <g transform="translate(330 742) rotate(150)">${solid('M-10 -22H60V22H-10Z', 'paper')}${solid('M60 -26H100V26H60Z', 'bright')}${solid('M100 -18C180 -30 320 -22 330 0C320 22 180 30 100 18Z', 'wood')}<path d="M-10 -22H16V22H-10Z" fill="#8a4a35"/></g>`;

/** From below: the ring with the vent's plug in, and the drip loop under it. */
const ventPlug = `${ground('white')}
  ${solid('M140 90H1060V610H140Z', 'white', '#8d9492')}
  <path d="M300 200H900V500H300Z" fill="url(#dark)" stroke="#79807e" stroke-width="6"/>
  <path d="M600 350m-130 0a130 130 0 1 0 260 0a130 130 0 1 0 -260 0" fill="url(#black)" stroke="#0b0d0e" stroke-width="5"/>
  ${[0, 60, 120, 180, 240, 300].map((turn) => `<path d="M600 350C620 300 640 270 690 260C700 300 660 340 600 350Z" transform="rotate(${turn} 600 350)" fill="#3a4044" stroke="#0b0d0e" stroke-width="3"/>`).join('')}
  ${[
    [220, 145],
    [600, 145],
    [980, 145],
    [220, 555],
    [600, 555],
    [980, 555],
  ]
    .map(([x = 0, y = 0]) => hexagon(x, y, 24))
    .join('')}
  ${wire('M900 470C1010 470 1040 560 1000 690C960 810 820 820 800 700', '#1d2022', 30)}
  ${wire('M800 700C790 660 760 640 700 640', '#1d2022', 30)}
  ${solid('M430 590H600V690H430Z', 'black')}${solid('M600 600H710V680H600Z', 'white')}
  <path d="M622 584H690V604H622Z" fill="url(#bright)" stroke="#333" stroke-width="3"/>
  ${wire('M430 640C300 640 200 700 140 920', '#1d2022', 30)}
  ${solid('M170 690H310V830H170Z', 'black')}${solid('M200 716H280V790H200Z', 'red')}<path d="M216 730H264V756H216Z" fill="#f0d9d4"/>`;

/** Three brackets along the rail of the roof, two bolts in each; their arms come out, and end in a lip that stands up. */
const brackets = `${ground('white')}
  <path d="M0 0H1200V240H0Z" fill="#8fb0c6"/>
  ${solid('M-20 240H1220V330C900 350 300 350 -20 330Z', 'white', '#8d9492')}
  ${solid('M-20 350H1220V640H-20Z', 'white', '#8d9492')}
  ${gleam('M0 372H1200', 8)}
  <path d="M0 660H1200V900H0Z" fill="url(#dark)" opacity="0.75"/>
  ${[200, 600, 1000].map((x) => bracketAt(x) + hexagon(x - 36, 410, 34, false, true) + hexagon(x - 36, 530, 34, false, true)).join('')}`;

/** A bracket from its front and a little from the left: plate, arm, gusset below it, and lip. */
function bracketAt(x: number): string {
  return [
    solid(
      `M${x - 92} 290Q${x - 92} 270 ${x - 72} 270H${x}Q${x + 20} 270 ${x + 20} 290V610H${x - 92}Z`,
      'black',
    ),
    solid(`M${x + 12} 520L${x + 110} 560V548L${x + 20} 600Z`, 'black'),
    solid(`M${x + 6} 462L${x + 34} 444L${x + 138} 484V548L${x + 110} 560L${x + 6} 520Z`, 'black'),
    solid(
      `M${x + 104} 424Q${x + 104} 414 ${x + 114} 410L${x + 130} 404Q${x + 142} 402 ${x + 142} 412V552L${x + 112} 564L${x + 104} 560Z`,
      'black',
    ),
    gleam(`M${x - 80} 300V592`, 5),
    gleam(`M${x + 16} 466L${x + 104} 502`, 5),
    gleam(`M${x + 113} 424V552`, 4),
  ].join('');
}

/** A frame lug with its cap, and the lever beside it. */
const lugCap = `${ground('black')}
  <path d="M520 -20H700V920H520Z" transform="rotate(14 600 450)" fill="url(#dark)"/>
  ${solid('M470 -40L650 -40L780 940H560Z', 'red', '#4a1712')}
  ${gleam('M520 0L640 900', 10)}
  ${solid('M330 330C330 290 360 280 400 280L640 330V560L400 610C360 610 330 600 330 560Z', 'red', '#4a1712')}
  <circle cx="420" cy="445" r="112" fill="url(#steel)" stroke="#1b1e20" stroke-width="5"/>
  ${solid('M420 355A90 90 0 1 1 420 535A90 90 0 1 1 420 355Z', 'black')}
  ${gleam('M356 410A70 70 0 0 1 420 376', 7)}
  <path d="M352 500L372 522" stroke="#e6eaec" stroke-width="9" stroke-linecap="round"/>
  <g transform="translate(366 516) rotate(150)">${solid('M0 0C30 -22 60 -26 110 -24L360 -34C410 -34 410 34 360 34L110 26C60 26 30 18 0 0Z', 'grip')}${gleam('M120 -12H350')}</g>
  <path d="M830 0H1200V900H900Z" fill="url(#steel)" opacity="0.9"/>
  ${[0, 1, 2, 3, 4, 5, 6].map((i) => `<path d="M${850 + i * 6} ${120 + i * 110}H1200" stroke="#14171a" stroke-width="22"/>`).join('')}`;

/** The cockpit sole from above: the lid of the locker with a screw at each corner, a finger hole in its middle. */
const lockerLid = `${ground('gel')}
  ${Array.from({ length: 22 }, (_, i) => `<path d="M0 ${20 + i * 42}H1200" stroke="#b4b9ac" stroke-width="3" opacity="0.7"/>`).join('')}
  <path d="M0 0H110V900H0ZM1090 0H1200V900H1090Z" fill="url(#gel)"/>
  ${shadow('M250 190H950V710H250Z', 0, 0)}
  <path d="M276 190H924Q950 190 950 216V684Q950 710 924 710H276Q250 710 250 684V216Q250 190 276 190Z" fill="url(#wood)" stroke="#3d2c1c" stroke-width="8"/>
  ${[0, 1, 2, 3, 4].map((i) => `<path d="M258 ${280 + i * 84}H942" stroke="#5d452d" stroke-width="6"/>`).join('')}
  ${[
    [300, 238],
    [900, 238],
    [300, 662],
    [900, 662],
  ]
    .map(([x = 0, y = 0]) => crossScrew(x, y, 22))
    .join('')}
  <circle cx="600" cy="450" r="42" fill="url(#dark)" stroke="#2f2114" stroke-width="8"/>
  ${gleam('M290 206H910', 5)}`;

/** The bottom of the hull from outside, the hole saw on its mark. */
const boring = `${ground('blue')}
  <path d="M0 620C400 560 800 560 1200 640V900H0Z" fill="#16324a" opacity="0.75"/>
  ${gleam('M0 596C400 536 800 536 1200 616', 9)}
  <path d="M0 170C400 110 800 110 1200 190" fill="none" stroke="#16324a" stroke-width="16"/>
  ${masking('M330 300L760 280L780 560L350 584Z')}
  <path d="M548 270L568 590M310 440L800 418" stroke="#1d3b8f" stroke-width="4" stroke-dasharray="34 10 6 10"/>
  <ellipse cx="556" cy="430" rx="86" ry="80" fill="none" stroke="#1d3b8f" stroke-width="5"/>
  <g transform="translate(556 430) rotate(24)">
  ${solid('M0 -82C34 -82 40 -40 40 0C40 40 34 82 0 82H150C170 60 176 30 176 0C176 -30 170 -60 150 -82Z', 'bright')}
  ${Array.from({ length: 9 }, (_, i) => `<path d="M${26 - Math.abs(i - 4) * 5} ${-76 + i * 19}l-18 8 16 8z" fill="#8b9297" stroke="#3c4246" stroke-width="2"/>`).join('')}
  ${solid('M170 -30H260V30H170Z', 'rod')}${solid('M250 -56H340V56H250Z', 'black')}
  ${solid('M340 -92H620C650 -92 660 -60 660 0C660 60 650 92 620 92H340C320 60 320 -60 340 -92Z', 'grip')}${gleam('M360 -70H620', 7)}</g>`;

/** A hole in the painted cover and the swivel blade in its edge. */
const deburring = `${ground('blue')}
  ${gleam('M0 150C400 110 800 110 1200 190', 14)}
  <path d="M0 760C400 800 800 800 1200 740V900H0Z" fill="#16324a" opacity="0.6"/>
  ${masking('M120 300H1080V640H120Z')}
  <circle cx="470" cy="470" r="124" fill="url(#dark)" stroke="#dfe6ea" stroke-width="12"/>
  <path d="M470 346A124 124 0 0 1 590 440" fill="none" stroke="#b9c9d4" stroke-width="20" stroke-dasharray="6 9"/>
  <path d="M350 470H270M590 470H690M470 350V290M470 590V650" stroke="#1d3b8f" stroke-width="4"/>
  <g transform="translate(586 446) rotate(-34)"><path d="M-30 34C-34 0 -8 -24 28 -10C48 -2 60 0 96 0" fill="none" stroke="#3c4246" stroke-width="22" stroke-linecap="round"/><path d="M-30 34C-34 0 -8 -24 28 -10C48 -2 60 0 96 0" fill="none" stroke="#c9d0d4" stroke-width="12" stroke-linecap="round"/>
  ${solid('M90 -22H180V22H90Z', 'bright')}${solid('M180 -46H500C530 -46 540 -20 540 0C540 20 530 46 500 46H180Z', 'grip')}${gleam('M200 -28H500', 7)}</g>
  ${[
    [420, 690],
    [520, 720],
    [610, 690],
    [380, 740],
  ]
    .map(
      ([x, y]) =>
        `<path d="M${x} ${y}q16 -22 30 2q-8 16 -24 4" fill="none" stroke="#6f9cba" stroke-width="6"/>`,
    )
    .join('')}`;

/** By their names; the guides' folders are told where they are written. */
export const scenes = {
  notch,
  cradle,
  'lamp-earth': earth('steel', 1, fuseBox),
  'dash-earth': earth('black', 2, fuseHolders),
  'roof-edge': roofEdge,
  'vent-plug': ventPlug,
  brackets,
  'lug-cap': lugCap,
  'locker-lid': lockerLid,
  boring,
  deburring,
} as const;
