/** What a technician types, and the page that must be among the first three. */
export interface Query {
  readonly typed: string;
  /** From the site's root; an entry of the glossary with its anchor. */
  readonly page: string;
}

/**
 * Written before the index was tuned, by looking at the demo shop and not at the index. A query that is not
 * found is a reason to mend the index, not to change the query.
 */
export const queries: { readonly [kind: string]: readonly Query[] } = {
  'by name or number': [
    { typed: 'lamp cradle', page: 'guides/lamp-cradle/index.html' },
    { typed: 'QL-335', page: 'guides/side-awning/index.html' },
    { typed: 'ql507', page: 'guides/swivel-seat/index.html' },
    { typed: 'parking sensors wicket', page: 'guides/flush-sensors/index.html' },
    { typed: 'larkspur dray', page: 'platforms/larkspur-dray/index.html' },
    { typed: 'torque wrench', page: 'tools/torque-60/index.html' },
  ],
  misspelt: [
    { typed: 'awnning', page: 'guides/side-awning/index.html' },
    { typed: 'swivvel seat', page: 'guides/swivel-seat/index.html' },
    { typed: 'rivit nut', page: 'fasteners/rivet-nut/index.html' },
    { typed: 'parkng sensor', page: 'guides/flush-sensors/index.html' },
    { typed: 'trim leaver', page: 'tools/trim-lever/index.html' },
    { typed: 'mulitmeter', page: 'tools/multimeter/index.html' },
    { typed: 'spiret level', page: 'tools/spirit-level/index.html' },
    { typed: 'larkspr', page: 'platforms/larkspur-dray/index.html' },
    { typed: 'hexagan head screw', page: 'fasteners/hex-head-screw/index.html' },
    { typed: 'jig saw', page: 'tools/jigsaw/index.html' },
    { typed: 'spring cilp', page: 'fasteners/spring-clip/index.html' },
    { typed: 'auxillary lamp', page: 'guides/lamp-cradle/index.html' },
    { typed: 'deburing tool', page: 'tools/deburring-tool/index.html' },
  ],
  'by a synonym': [
    { typed: 'panel popper', page: 'tools/trim-lever/index.html' },
    { typed: 'dust extractor', page: 'tools/vacuum-cleaner/index.html' },
    { typed: 'scrivet', page: 'fasteners/centre-pin-clip/index.html' },
    { typed: 'christmas tree clip', page: 'fasteners/fir-tree-clip/index.html' },
    { typed: 'safety glasses', page: 'tools/eye-protection/index.html' },
    { typed: 'die grinder', page: 'tools/rotary-cutter/index.html' },
    { typed: 'cordless drill', page: 'tools/drill/index.html' },
    { typed: 'insert nut', page: 'fasteners/rivet-nut/index.html' },
    { typed: 'phillips 2', page: 'tools/bit-ph2/index.html' },
    { typed: 'allen key', page: 'glossary/index.html#hexagon-socket' },
    { typed: 'saw horses', page: 'tools/trestles/index.html' },
    { typed: 'star screw', page: 'fasteners/panel-screw/index.html' },
  ],
  'by size or torque': [
    { typed: '13mm', page: 'tools/socket-13/index.html' },
    { typed: '13 mm spanner', page: 'tools/spanner-13/index.html' },
    { typed: 'torx 25', page: 'tools/bit-t25/index.html' },
    { typed: 't50', page: 'tools/bit-t50/index.html' },
    { typed: '25nm', page: 'fasteners/flange-nut/index.html' },
    { typed: '45 Nm seat bolt', page: 'guides/swivel-seat/index.html' },
    { typed: '18 ft lb', page: 'fasteners/flange-nut/index.html' },
    { typed: 'm10x1.25', page: 'guides/swivel-seat/index.html' },
    { typed: '19 mm hole saw', page: 'tools/hole-saw-19/index.html' },
    { typed: '10-60 nm', page: 'tools/torque-60/index.html' },
    { typed: '3/8 ratchet', page: 'tools/ratchet-m/index.html' },
    { typed: '2,5 mm drill', page: 'tools/drill-2-5/index.html' },
    { typed: 'M8 rivet nut', page: 'guides/side-awning/index.html' },
  ],
};
