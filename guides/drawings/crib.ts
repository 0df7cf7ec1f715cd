/**
 * A picture of each tool of the crib and of each kind of fastener, as it lies on the bench: one outline, the few lines
 * by which it is known, and its working end turned to the eye. All stand in a box of 240 × 160; sizes of one kind
 * differ as they do in the drawer.
 */
import { firTree, lever, torqueWrench } from './hardware.ts';
import { box, circle, ellipse, n, path, place, poly, small } from './pen.ts';

/** The corners of a regular figure about the origin; the first lies at `start` degrees, 0 to the right. */
function regular(sides: number, r: number, start = 0): [number, number][] {
  return Array.from({ length: sides }, (_, i) => {
    const angle = ((start + (i * 360) / sides) * Math.PI) / 180;
    return [r * Math.cos(angle), r * Math.sin(angle)];
  });
}

/** A six-lobe recess or tip from its end. */
const star = (x: number, y: number, r: number): string =>
  place(
    x,
    y,
    poly(
      regular(12, r).map(([px, py], i) => (i % 2 === 0 ? [px, py] : [px * 0.66, py * 0.66])),
      'shade',
    ),
  );

/** A cross recess or tip from its end. */
const cross = (x: number, y: number, r: number): string =>
  place(
    x,
    y,
    path(
      `M${n(-r * 0.25)} ${n(-r)}H${n(r * 0.25)}V${n(-r * 0.25)}H${n(r)}V${n(r * 0.25)}H${n(r * 0.25)}V${n(r)}H${n(-r * 0.25)}V${n(r * 0.25)}H${n(-r)}V${n(-r * 0.25)}H${n(-r * 0.25)}Z`,
      'shade',
    ),
  );

/** A socket standing on its square, its mouth to the eye; `size` across flats in millimetres. */
function socket(size: number): string {
  const r = 20 + size * 1.7;
  return (
    path(`M${n(120 - r)} 52V112A${n(r)} ${n(r * 0.42)} 0 0 0 ${n(120 + r)} 112V52Z`, 'part') +
    path(`M${n(120 - r)} 98A${n(r)} ${n(r * 0.42)} 0 0 0 ${n(120 + r)} 98`, 'detail') +
    ellipse(120, 52, r, r * 0.42, 'back') +
    place(120, 52, poly(regular(6, 8 + size * 1.9), 'shade'), 0, [1, 0.42])
  );
}

/** A spanner, open at one end and a ring at the other. */
function spanner(size: number): string {
  const k = 0.64 + size / 48;
  return place(
    120,
    82,
    path(
      'M-58 -8L-70 -22C-84 -30 -100 -26 -106 -16L-88 -8V8L-106 16C-100 26 -84 30 -70 22L-58 8L62 7C66 18 76 25 88 25C102 25 112 14 112 0C112 -14 102 -25 88 -25C76 -25 66 -18 62 -7Z',
      'part',
    ) +
      place(88, 0, poly(regular(12, 15), 'shade')) +
      path('M-44 -2H48M-44 3H48', 'detail'),
    -12,
    k,
  );
}

/** A driver bit lying down, and its tip from the end. */
function bit(tip: string, length: number, thick: number): string {
  const x = 42;
  const end = x + 46 + length;
  return (
    path(`M${x} 84H${x + 40}L${x + 46} 88V110L${x + 40} 114H${x}L${x - 4} 110V88Z`, 'part') +
    path(`M${x} 94H${x + 43}M${x} 104H${x + 43}`, 'detail') +
    path(
      `M${x + 46} ${99 - thick}H${end - 8}L${end} ${n(99 - thick * 0.7)}V${n(99 + thick * 0.7)}L${end - 8} ${99 + thick}H${x + 46}Z`,
      'item',
    ) +
    path(`M${end - 22} ${n(99 - thick * 0.4)}H${end}M${end - 22} ${n(99 + thick * 0.4)}H${end}`, 'detail') +
    circle(200, 40, 26, 'part') +
    tip
  );
}

/** A twist drill; `size` in millimetres. */
function twistDrill(size: number): string {
  const r = 3 + size * 1.5;
  const flutes = [0, 1, 2, 3, 4].map((i) => {
    const x = 100 + i * 22;
    return path(
      `M${x} ${n(84 + r)}C${x + 8} ${n(84 + r * 0.3)} ${x + 12} ${n(84 - r * 0.3)} ${x + 22} ${n(84 - r)}`,
      'detail',
    );
  });
  return (
    box(22, 84 - r * 0.9, 74, r * 1.8, 'part', 2) +
    path(`M96 ${n(84 - r)}H208L224 84L208 ${n(84 + r)}H96Z`, 'item') +
    flutes.join('')
  );
}

/** A hole saw on its arbor, teeth to the right. */
function holeSaw(size: number): string {
  const r = 14 + size * 1.2;
  const teeth = Array.from({ length: 9 }, (_, i) => {
    const y = 82 - r + (i * 2 * r) / 9;
    return `L${n(i % 2 === 0 ? 176 : 168)} ${n(y)}`;
  });
  return (
    path('M26 72H74V92H26Z', 'part') +
    path('M26 78H74M26 86H74', 'detail') +
    box(74, 62, 18, 40, 'back', 3) +
    path(`M92 ${n(82 - r)}H168${teeth.join('')}L168 ${n(82 + r)}H92Z`, 'item') +
    path(`M112 ${n(82 - r * 0.45)}H146V${n(82 + r * 0.45)}H112Z`, 'shade') +
    path('M168 78H204L214 82L204 86H168Z', 'part')
  );
}

/** Hand pliers with their handles down; what grips or cuts is drawn by the caller, its hinge at the origin. */
const pliers = (jaws: string): string =>
  place(
    120,
    60,
    path('M-8 8C-22 40 -34 70 -30 98H-16C-16 74 -6 44 4 16Z', 'item') +
      path('M8 8C22 40 34 70 30 98H16C16 74 6 44 -4 16Z', 'item') +
      jaws +
      circle(0, 4, 10, 'part') +
      circle(0, 4, 3, 'shade'),
  );

const ratchet = (k: number): string =>
  place(
    120,
    80,
    path(
      'M-62 -10C-66 -26 -104 -30 -108 0C-104 30 -66 26 -62 10L40 7L44 12H104C114 12 114 -12 104 -12H44L40 -7Z',
      'part',
    ) +
      circle(-84, 0, 15, 'back') +
      poly(
        regular(4, 10, 45).map(([x, y]) => [x - 84, y]),
        'shade',
      ) +
      path('M54 -12V12M66 -12V12M78 -12V12M90 -12V12', 'detail') +
      box(-66, -4, 10, 8, 'item', 2),
    -8,
    k,
  );

const torque = (k: number): string => place(120 - 108 * k, 84, torqueWrench(), 0, k);

const bench = path('M16 146H224', 'detail');

/** Tools that are made once; families of sizes follow below. */
const single: Readonly<Record<string, string>> = {
  'trim-lever':
    place(34, 112, lever(0, 0), 0, 1.05) +
    path('M34 52L52 38H64L60 46L64 54H52Z', 'part') +
    path('M64 38L92 34H186C206 34 206 66 186 66H92L64 54', 'part') +
    path('M104 42H180M104 58H180', 'detail'),
  'wide-lever':
    path('M26 36C20 56 20 88 26 108H52L84 88H186C210 88 210 56 186 56H84L52 36Z', 'part') +
    path('M96 64H184M96 80H184M34 40V104', 'detail'),
  'clip-lifter':
    path(
      'M24 62L64 56H96V70H70C60 70 60 92 70 92H96V106H64L24 100C40 94 46 92 46 81C46 70 40 68 24 62Z',
      'part',
    ) +
    box(96, 60, 122, 42, 'item', 20) +
    path('M112 70H206M112 92H206', 'detail'),
  'clip-pliers': pliers(
    path('M-6 8L-22 -34L-8 -52H-2L-8 -34L2 4Z', 'part') + path('M6 8L22 -34L8 -52H2L8 -34L-2 4Z', 'part'),
  ),
  'plug-pick':
    path('M26 70C34 62 44 66 46 76H116', 'bold') +
    box(116, 62, 100, 28, 'item', 13) +
    path('M132 70H200M132 82H200', 'detail'),
  'side-cutters': pliers(
    path('M-8 6C-30 -8 -28 -34 -4 -46L0 -30L0 0Z', 'part') +
      path('M8 6C30 -8 28 -34 4 -46L0 -30L0 0Z', 'part'),
  ),
  'crimp-tool': pliers(
    path('M-8 6L-30 -10V-46H-3V-36C-8 -34 -8 -28 -3 -26V-20C-8 -18 -8 -12 -3 -10V4Z', 'part') +
      path('M8 6L30 -10V-46H3V-36C8 -34 8 -28 3 -26V-20C8 -18 8 -12 3 -10V4Z', 'part') +
      path('M-24 -40V-16M24 -40V-16', 'detail'),
  ),
  'wire-stripper': pliers(
    path('M-8 6L-20 -20L-10 -54H-1V-44L-4 -41L-1 -38V-30L-3 -28L-1 -26V0Z', 'part') +
      path('M8 6L20 -20L10 -54H1V-44L4 -41L1 -38V-30L3 -28L1 -26V0Z', 'part') +
      path('M0 -46C20 -52 40 -46 64 -50', 'bold'),
  ),
  'ratchet-s': ratchet(0.78),
  'ratchet-m': ratchet(1),
  'extension-150':
    box(52, 70, 138, 22, 'part', 4) +
    box(26, 60, 34, 42, 'part', 4) +
    box(190, 73, 24, 16, 'item', 2) +
    circle(202, 81, 3, 'shade') +
    path('M60 78H188M34 60V102', 'detail'),
  'bit-driver':
    path('M96 58C70 50 40 52 28 62V98C40 108 70 110 96 102Z', 'item') +
    path('M34 70H92M34 80H92M34 90H92', 'detail') +
    box(96, 72, 82, 16, 'part', 3) +
    box(178, 66, 34, 28, 'part', 4) +
    place(200, 80, poly(regular(6, 9), 'shade')),
  'crowfoot-13':
    path(
      'M60 44H128C150 44 172 30 190 40L206 60L176 66C166 70 166 92 176 96L206 102L190 122C172 132 150 118 128 118H60C46 118 46 44 60 44Z',
      'part',
    ) + box(68, 62, 38, 38, 'shade', 3),
  drill:
    path(
      'M44 36H150C158 36 160 42 160 50V66C160 74 156 78 148 78H112L104 118H128V144H56V118H68L74 78H44C34 78 30 70 30 58C30 46 34 36 44 36Z',
      'part',
    ) +
    path('M160 44H186L194 50V66L186 72H160Z', 'back') +
    path('M166 44V72M174 44V72', 'detail') +
    path('M194 54H226V62H194Z', 'item') +
    path('M112 78C118 86 116 98 108 100', 'bold') +
    path('M56 128H128M60 48H120M60 56H120', 'detail'),
  'rotary-cutter':
    path('M30 58C30 50 34 46 42 46H150L170 58V92L150 104H42C34 104 30 100 30 92Z', 'part') +
    path('M50 56H110M50 66H110M50 84H110M50 94H110', 'detail') +
    box(170, 64, 22, 22, 'back', 3) +
    path('M192 70H206C216 66 222 70 222 75C222 80 216 84 206 80H192Z', 'item') +
    path('M206 70L216 80M212 68L220 78', 'detail'),
  jigsaw:
    path('M44 52C44 36 60 28 82 28H158C176 28 184 38 184 52V90H176V62H96V90H44Z', 'part') +
    box(36, 90, 176, 12, 'back', 3) +
    path('M150 102H162V146L156 150L150 146Z', 'item') +
    path('M150 112L146 114M150 120L146 122M150 128L146 130M150 136L146 138', 'detail') +
    path('M52 60H88V82H52Z', 'detail'),
  'hand-file':
    path('M24 70H150L156 64V100L150 94H24C18 88 18 76 24 70Z', 'part') +
    path(
      'M34 72L52 92M48 72L66 92M62 72L80 92M76 72L94 92M90 72L108 92M104 72L122 92M118 72L136 92',
      'detail',
    ) +
    path('M156 74H170V90H156Z', 'back') +
    path('M170 66C186 62 212 66 216 82C212 98 186 102 170 98Z', 'item'),
  'deburring-tool':
    box(24, 66, 118, 28, 'item', 13) +
    path('M38 74H128M38 86H128', 'detail') +
    box(142, 72, 22, 16, 'part', 2) +
    path('M164 80H186C204 80 210 66 200 56C194 50 186 52 184 58', 'bold') +
    path('M186 86C210 86 218 64 204 52', 'detail'),
  'rivet-nut-tool':
    path('M30 62H168L178 70V90L168 98H30C24 98 24 62 30 62Z', 'part') +
    path('M60 98L28 148H46L84 98Z', 'item') +
    path('M84 62L60 18H78L112 62Z', 'item') +
    box(178, 72, 12, 16, 'back') +
    path('M190 76H222V84H190Z', 'part') +
    path('M196 76V84M202 76V84M208 76V84M214 76V84', 'detail'),
  'tape-measure':
    path('M44 46C44 36 52 30 62 30H122C140 30 150 42 150 58V118H52C46 118 44 114 44 108Z', 'item') +
    circle(98, 74, 28, 'part') +
    box(150, 104, 66, 12, 'part') +
    path('M160 104V110M170 104V112M180 104V110M190 104V112M200 104V110M216 98V122', 'detail'),
  'steel-rule': place(
    120,
    80,
    box(-106, -18, 212, 36, 'part', 2) +
      path(
        Array.from({ length: 20 }, (_, i) => `M${-100 + i * 10} -18v${i % 5 === 0 ? 16 : 9}`).join(''),
        'detail',
      ) +
      circle(96, 6, 5, 'shade'),
    -10,
  ),
  'spirit-level':
    box(16, 58, 208, 46, 'part', 4) +
    box(92, 66, 56, 20, 'item', 9) +
    path('M112 66V86M128 66V86', 'detail') +
    ellipse(120, 75, 7, 5, 'part') +
    circle(46, 81, 13, 'item') +
    circle(194, 81, 13, 'item') +
    path('M16 96H224', 'detail'),
  'paint-pen':
    box(30, 66, 120, 28, 'part', 6) +
    box(50, 66, 54, 28, 'item') +
    path('M150 70H176L186 76V84L176 90H150Z', 'back') +
    path('M186 77L204 78V82L186 83Z', 'shade') +
    path('M196 112C206 104 216 118 226 108', 'bold'),
  'centre-punch':
    box(34, 66, 112, 28, 'part', 5) +
    path('M44 72H136M44 80H136M44 88H136', 'detail') +
    box(22, 70, 14, 20, 'back', 4) +
    path('M146 70H186L218 80L186 90H146Z', 'part'),
  'fault-reader':
    box(56, 18, 92, 124, 'part', 10) +
    box(66, 28, 72, 54, 'item', 3) +
    path('M72 40H120M72 52H132M72 64H108', 'detail') +
    [0, 1, 2].map((i) => circle(78 + i * 24, 104, 8, 'back')).join('') +
    path('M148 40C186 40 190 70 190 96', 'bold') +
    path('M172 96H208L202 124H178Z', 'back') +
    path('M180 108H200', 'detail'),
  multimeter:
    box(62, 16, 84, 128, 'part', 10) +
    box(72, 26, 64, 32, 'item', 3) +
    path('M86 34V50M94 34H104V42H94V50H104M112 34V50H122V34Z', 'detail') +
    circle(104, 86, 22, 'back') +
    path('M104 86L116 72', 'bold') +
    circle(86, 128, 6, 'shade') +
    circle(122, 128, 6, 'shade') +
    path('M86 134C86 156 176 160 180 116V70L186 34', 'bold') +
    path('M122 134C124 152 198 152 206 110V70L212 34', 'bold'),
  trestles:
    path('M28 44H134V58H28Z', 'item') +
    path('M40 58L22 138M52 58L66 138M110 58L96 138M122 58L140 138M30 110H60M102 110H132', 'bold') +
    place(
      86,
      8,
      path('M28 44H134V58H28Z', 'item') +
        path('M40 58L22 130M52 58L66 130M110 58L96 130M122 58L140 130', 'bold'),
    ),
  'heat-gun':
    path('M40 44H150L166 52V80L150 88H124L116 146H78L86 88H40C28 88 24 78 24 66C24 54 28 44 40 44Z', 'part') +
    box(166, 54, 46, 24, 'shade', 2) +
    path('M30 54V78M36 50V82M96 104H112', 'detail') +
    path('M218 54C224 58 214 62 220 68M226 56C232 60 222 66 228 72', 'detail'),
  'vacuum-cleaner':
    box(50, 54, 104, 66, 'item', 12) +
    path('M50 78H154M62 66H100', 'detail') +
    box(66, 38, 72, 16, 'part', 6) +
    circle(74, 130, 14, 'shade') +
    circle(132, 130, 14, 'shade') +
    path('M154 84C190 84 178 30 204 34C214 36 208 92 212 118', 'bold') +
    path('M196 118H228L234 136H190Z', 'part'),
  'sealant-gun':
    path('M60 52H166V86H60C52 86 52 52 60 52Z', 'item') +
    path('M166 60L184 64V74L166 78Z', 'part') +
    path('M184 66L224 68V71L184 73Z', 'part') +
    path('M18 66H60V72H18ZM14 58V80', 'part') +
    path('M60 86L44 140H62L82 86ZM84 86C92 104 84 124 74 132', 'bold'),
  'step-platform':
    box(34, 54, 172, 14, 'item', 2) +
    path('M48 68L28 146M192 68L212 146M62 68L76 146M178 68L164 146', 'bold') +
    path('M34 104H70M170 104H206', 'bold') +
    path('M44 61H196', 'detail'),
  'inspection-lamp':
    box(34, 62, 92, 36, 'item', 14) +
    path('M126 66H206C216 66 220 72 220 80C220 88 216 94 206 94H126Z', 'part') +
    box(136, 72, 70, 16, 'back', 4) +
    path('M136 80H206', 'detail') +
    path('M34 80C18 80 18 110 30 120', 'bold') +
    path('M150 56L146 44M172 56V42M194 56L198 44', 'detail'),
  'wheel-chocks':
    path('M20 118L78 54C88 66 90 84 92 118Z', 'item') +
    path('M34 112H84M48 98H86M62 84H86', 'detail') +
    place(
      116,
      0,
      path('M20 118L78 54C88 66 90 84 92 118Z', 'item') + path('M34 112H84M48 98H86M62 84H86', 'detail'),
    ) +
    bench,
  jack:
    path('M28 112L40 92H150L188 84V112Z', 'part') +
    path('M70 92L150 50L164 58L120 92Z', 'item') +
    ellipse(156, 48, 20, 8, 'back') +
    circle(52, 120, 14, 'shade') +
    circle(178, 120, 12, 'shade') +
    path('M44 92L18 24', 'bold') +
    bench,
  'axle-stands':
    path('M66 74L34 140H54L72 104L90 140H110L78 74Z', 'part') +
    box(66, 40, 12, 60, 'back') +
    path('M54 40L60 30C66 38 78 38 84 30L90 40Z', 'item') +
    place(
      98,
      0,
      path('M66 74L34 140H54L72 104L90 140H110L78 74Z', 'part') +
        box(66, 40, 12, 60, 'back') +
        path('M54 40L60 30C66 38 78 38 84 30L90 40Z', 'item'),
    ) +
    bench,
  'spray-lance':
    path('M46 56H74V132C74 138 46 138 46 132Z', 'item') +
    path('M50 56L54 42H66L70 56Z', 'part') +
    path('M66 46C120 30 150 40 176 64L206 96', 'bold') +
    circle(208, 98, 6, 'shade') +
    path('M208 84V76M222 98H230M208 112V120M218 88L224 82M218 108L224 114M198 108L192 114', 'detail'),
  'eye-protection':
    path(
      'M34 66C34 54 44 50 60 50H102C112 50 116 56 120 60C124 56 128 50 138 50H180C196 50 206 54 206 66C206 90 196 106 174 106H144C130 106 126 92 120 82C114 92 110 106 96 106H66C44 106 34 90 34 66Z',
      'item',
    ) + path('M34 62L14 44M206 62L226 44M50 62L66 58M150 62L166 58', 'bold'),
  gloves:
    path(
      'M70 146V96C60 88 52 72 46 58C42 48 54 42 60 52L74 74V34C74 24 88 24 88 34V66H92V24C92 14 106 14 106 24V66H110V28C110 18 124 18 124 28V68H128V40C128 30 142 30 142 40V96L136 146Z',
      'part',
    ) +
    path('M68 128H138M66 112H140', 'detail') +
    path('M78 80H138V100H80Z', 'back'),
  'nitrile-gloves':
    path(
      'M66 146V96C56 88 48 72 42 58C38 48 50 42 56 52L70 74V34C70 24 84 24 84 34V66H88V24C88 14 102 14 102 24V66H106V28C106 18 120 18 120 28V68H124V40C124 30 138 30 138 40V96L134 146C120 152 82 152 66 146Z',
      'item',
    ) +
    path('M76 84C90 78 112 78 126 86', 'detail') +
    path('M156 60H206V132H156Z', 'back') +
    path('M168 60C170 48 192 48 194 60', 'item') +
    path('M164 92H198', 'detail'),
  'ear-protection':
    path('M70 88C66 22 174 22 170 88', 'bold') +
    path('M62 88C58 30 182 30 178 88', 'bold') +
    box(52, 82, 32, 54, 'item', 14) +
    box(156, 82, 32, 54, 'item', 14) +
    path('M84 92V126M156 92V126', 'bold'),
  'dust-mask':
    path('M70 66C84 44 156 44 170 66C182 96 160 128 120 132C80 128 58 96 70 66Z', 'part') +
    path('M70 70L26 50M170 70L214 50M74 98L30 112M166 98L210 112', 'bold') +
    path('M86 62C104 52 136 52 154 62', 'detail') +
    circle(120, 98, 16, 'back') +
    path('M110 98H130M120 88V108', 'detail'),
};

const each = (ids: readonly number[], name: string, draw: (size: number) => string) =>
  Object.fromEntries(ids.map((size) => [name + String(size).replace('.', '-'), draw(size)]));

const tools: Readonly<Record<string, string>> = {
  ...single,
  ...each([7, 8, 10, 13, 15, 16, 18], 'socket-', socket),
  ...each([10, 13, 16], 'spanner-', spanner),
  ...each([15, 20, 25, 30], 'bit-t', (size) => bit(star(200, 40, 8 + size * 0.35), 54, 3 + size * 0.2)),
  'bit-t50': bit(star(200, 40, 21), 112, 10),
  ...each([1, 2], 'bit-ph', (size) => bit(cross(200, 40, 10 + size * 4), 54, 4 + size * 2)),
  'torque-20': torque(0.62),
  'torque-60': torque(0.76),
  'torque-200': torque(0.86),
  ...each([2.5, 3, 3.4, 5.5, 6.6, 9, 11], 'drill-', twistDrill),
  ...each([19, 22], 'hole-saw-', holeSaw),
};

/** A threaded shank hanging from the origin. */
function shank(length: number, r: number, pointed = false): string {
  const turns = Array.from(
    { length: Math.floor(length / 7) },
    (_, i) => `M${n(-r)} ${4 + i * 7}L${n(r)} ${8 + i * 7}`,
  );
  const end = pointed ? `L0 ${length + 12}L${n(-r)} ${length}` : `H${n(-r)}`;
  return path(`M${n(-r)} 0H${n(r)}V${length}${end}Z`, 'item') + path(turns.join(''), 'detail');
}

/** From the side at the left, its head from above at the right. */
const twoViews = (side: string, above: string): string => place(74, 50, side) + place(176, 80, above);

const hexSide = (flange: boolean): string =>
  box(-20, -26, 40, 24, 'part', 2) +
  path('M-8 -26V-2M8 -26V-2', 'detail') +
  (flange ? box(-32, -4, 64, 8, 'part', 3) : '');
const hexAbove = (flange: boolean): string =>
  (flange ? circle(0, 0, 42, 'part') : '') + poly(regular(6, 30), 'part');
const panSide = path('M-28 0C-28 -20 -14 -26 0 -26C14 -26 28 -20 28 0Z', 'part');

const types: Readonly<Record<string, string>> = {
  'centre-pin-clip': twoViews(
    path('M-34 -4H34V6H12L18 60L8 84L4 10H-4L-8 84L-18 60L-12 6H-34Z', 'item') +
      path('M-20 -16H20V-4H5V40L0 48L-5 40V-4H-20Z', 'part'),
    circle(0, 0, 42, 'item') + circle(0, 0, 22, 'part'),
  ),
  'fir-tree-clip': twoViews(
    place(0, 76, firTree(), 0, 2),
    circle(0, 0, 38, 'item') + circle(0, 0, 8, 'back'),
  ),
  'spring-clip': twoViews(
    path('M-6 -20H6V8L26 40L10 84L4 64L12 42L0 20L-12 42L-4 64L-10 84L-26 40L-6 8Z', 'part') +
      box(-22, -24, 44, 8, 'item', 2),
    box(-36, -18, 72, 36, 'part', 4) + box(-8, -18, 16, 36, 'item') + path('M-28 -10V10M28 -10V10', 'detail'),
  ),
  'hex-head-screw': twoViews(
    hexSide(false) + box(-26, -3, 52, 6, 'part', 2) + shank(56, 11, true),
    circle(0, 0, 36, 'part') + hexAbove(false),
  ),
  'panel-screw': twoViews(panSide + shank(48, 11, true), circle(0, 0, 40, 'part') + star(0, 0, 18)),
  'tray-screw': twoViews(
    box(-38, -6, 76, 8, 'part', 3) + path('M-22 -6C-22 -22 22 -22 22 -6Z', 'part') + shank(56, 12),
    circle(0, 0, 46, 'part') + circle(0, 0, 28, 'part') + star(0, 0, 18),
  ),
  'flange-bolt': twoViews(hexSide(true) + shank(72, 13), hexAbove(true)),
  'flange-nut': twoViews(
    place(
      0,
      34,
      box(-28, -30, 56, 36, 'part', 3) +
        path('M-10 -30V6M10 -30V6', 'detail') +
        path('M-40 18L-34 6H34L40 18Z', 'part'),
    ),
    hexAbove(true) + circle(0, 0, 16, 'shade'),
  ),
  'locked-bolt': twoViews(
    hexSide(true) +
      shank(78, 13) +
      box(-13, 40, 26, 26, 'back') +
      path('M-13 46L13 50M-13 53L13 57M-13 60L13 64', 'detail'),
    hexAbove(true) + star(0, 0, 16),
  ),
  'pan-screw': twoViews(panSide + shank(54, 10), circle(0, 0, 40, 'part') + cross(0, 0, 20)),
  'rivet-nut': twoViews(
    box(-34, -8, 68, 9, 'part', 2) +
      box(-20, 1, 40, 84, 'item', 2) +
      path('M-10 40H10V85H-10ZM-20 36H20', 'detail') +
      path('M-10 48L10 52M-10 57L10 61M-10 66L10 70M-10 75L10 79', 'detail'),
    circle(0, 0, 42, 'part') + circle(0, 0, 22, 'shade') + circle(0, 0, 18, 'detail'),
  ),
};

const framed = (drawings: Readonly<Record<string, string>>) =>
  Object.fromEntries(Object.entries(drawings).map(([id, drawing]) => [id, small(drawing)]));

/** File names under `pictures/tools/`: the id of the tool. */
export const toolPictures: Readonly<Record<string, string>> = framed(tools);

/** File names under `pictures/fasteners/`: the id of the kind. */
export const fastenerPictures: Readonly<Record<string, string>> = framed(types);
