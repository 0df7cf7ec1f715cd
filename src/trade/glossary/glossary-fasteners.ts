import type { FastenerTerm } from './glossary-term.ts';

/**
 * Data sets that hold the dimensions of a standard under its number: FreeCAD FastenersWB (`FsData`), bd_warehouse,
 * BOLTS.
 */
const dataSets = 'FreeCAD FastenersWB, bd_warehouse, BOLTS';

/** Every kind of fastener by its shape; clips: common practice, no source. */
export const fastenerTerms: readonly Omit<FastenerTerm, 'kind'>[] = [
  {
    shape: 'hexagon-head',
    id: 'hexagon-head',
    term: 'Hexagon head',
    standard: 'ISO 4014, ISO 4017',
    readIn: dataSets,
    synonyms: ['hex bolt', 'hex screw', 'set screw'],
    meaning: 'A bolt or screw turned by six flats on its head.',
  },
  {
    shape: 'flange-head',
    id: 'flange-head',
    term: 'Flange head',
    standard: 'ISO 4162',
    readIn: dataSets,
    synonyms: ['flanged bolt', 'washer-faced bolt', 'collar bolt'],
    meaning: 'A hexagon head with a wide foot in one piece, which spreads the load without a loose washer.',
  },
  {
    shape: 'socket-head',
    id: 'socket-head',
    term: 'Socket head',
    standard: 'ISO 4762',
    readIn: dataSets,
    synonyms: ['cap screw', 'socket cap'],
    tradeMarks: ['allen bolt'],
    meaning: 'A cylinder with a recess in its top, for places where no socket fits round the head.',
  },
  {
    shape: 'pan-head',
    id: 'pan-head',
    term: 'Pan head',
    standard: 'ISO 7045, ISO 14583',
    readIn: dataSets,
    synonyms: ['round head', 'cheese head', 'dome head'],
    meaning: 'A low rounded head with a flat seat, which stands on the surface.',
  },
  {
    shape: 'countersunk',
    id: 'countersunk',
    term: 'Countersunk head',
    standard: 'ISO 7046, ISO 10642',
    readIn: dataSets,
    synonyms: ['flat head', 'csk', 'flush screw'],
    meaning: 'A cone under a flat top that sinks flush into its seat. Its length is measured with the head.',
  },
  {
    shape: 'nut',
    id: 'nut',
    term: 'Hexagon nut',
    standard: 'ISO 4032',
    readIn: dataSets,
    synonyms: ['full nut', 'plain nut'],
    meaning: 'A hexagon with a thread. Nut and bolt are of classes that belong together.',
  },
  {
    shape: 'flange-nut',
    id: 'flange-nut',
    term: 'Flange nut',
    standard: 'ISO 4161',
    readIn: dataSets,
    synonyms: ['flanged nut', 'collar nut'],
    meaning:
      'A nut with a wide foot in one piece. Many have teeth below that bite: they leave marks on paint.',
  },
  {
    shape: 'rivet-nut',
    id: 'rivet-nut',
    term: 'Rivet nut',
    standard: null,
    readIn: null,
    synonyms: ['insert nut', 'blind nut'],
    tradeMarks: ['nutsert'],
    meaning:
      'A threaded sleeve that is set from one side and folds behind the sheet. It puts a thread where none can be cut.',
  },
  {
    shape: 'stud',
    id: 'stud',
    term: 'Stud',
    standard: 'DIN 939',
    readIn: 'DIN 939 on scribd.com/document/533881721: studs with a length of engagement of about 1.25 d',
    synonyms: ['stud bolt', 'threaded pin'],
    meaning: 'A bolt without a head: one end stays where it is screwed in, the other takes a nut.',
  },
  {
    shape: 'washer',
    id: 'washer',
    term: 'Washer',
    standard: 'ISO 7089',
    readIn: null,
    synonyms: ['plain washer', 'flat washer', 'shim ring'],
    meaning: 'A ring under a head or a nut that spreads the load and saves the surface.',
  },
  {
    shape: 'push-in',
    id: 'push-in-clip',
    term: 'Push-in clip',
    standard: null,
    readIn: null,
    synonyms: ['push rivet', 'expanding rivet', 'push-pin', 'scrivet'],
    meaning:
      'A plastic body that a centre pin spreads. It holds covers and liners and goes back many times if the pin is raised first.',
  },
  {
    shape: 'pull-out',
    id: 'pull-out-clip',
    term: 'Pull-out clip',
    standard: null,
    readIn: null,
    synonyms: ['fir-tree clip', 'christmas tree', 'ribbed clip', 'trim clip'],
    meaning:
      'A plastic stem with ribs that grips the edge of a hole. Cold, it breaks; pulled askew, it stays behind.',
  },
  {
    shape: 'spring-clip',
    id: 'spring-clip',
    term: 'Spring clip',
    standard: null,
    readIn: null,
    synonyms: ['metal trim clip', 'W clip', 'U clip'],
    meaning:
      'A bent strip of spring steel on a panel that snaps into a slot. Look that none stays in the slot.',
  },
];
